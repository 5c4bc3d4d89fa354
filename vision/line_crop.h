#pragma once

#include <optional>
#include <vector>

#include <opencv2/core.hpp>

#include "vision/line_curve.h"
#include "vision/rectify.h"

namespace vision {

// Where one line stands in a rectified picture.
struct LineRow {
    cv::Rect2d box;     // rectified pixels, around the whole line
    LineCurve curve{};  // its course where it is bent

    // Of the letters: across the course, else the box's.
    double height() const { return curve.isStraight() ? box.height : curve.height_px; }
};

// The lines that the stamp's outline named; none where it named none.
std::vector<LineRow> rowsOf(const RectifiedStamp& stamp);

// One line cut out, unrolled if it is bent, and brought to the size a recogniser likes.
struct LineCrop {
    cv::Mat grey;        // CV_8UC1, ink dark, a rim of ground on every side
    double scale = 1;    // crop pixels a rectified pixel
    cv::Point2d origin;  // of a straight line: rectified pixel at the crop's pixel (0, 0)
    std::optional<CurvePath> path{};  // of a bent line, whose middle row of pixels lies along it
    double side_px = 0;               // rim before the line's beginning, rectified pixels

    // Where a column of the crop stands in the rectified picture: its x, of a bent line on the
    // course.
    double rectifiedX(double crop_x) const;
};

struct LineRendering {
    double letter_px = 36;     // the line is brought to this height
    double rim = 0.3;          // ground around it, in its heights
    double smoothing = 0.045;  // deviation of the blur, in its heights; 0 for none
};

// Cuts a line out of a layer; a bent one is unrolled along its course, once, from the layer.
// Beyond the picture the ground is carried on.
//   layer    CV_8UC1; not changed
// Throws std::invalid_argument if the layer is empty or not CV_8UC1, the line has no area or an
// option is out of range.
LineCrop cropLine(const cv::Mat& layer, const LineRow& row, const LineRendering& rendering = {});

}  // namespace vision
