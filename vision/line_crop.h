#pragma once

#include <opencv2/core.hpp>

namespace vision {

// One line cut out and brought to the size a recogniser likes.
struct LineCrop {
    cv::Mat grey;        // CV_8UC1, ink dark, a rim of ground on every side
    double scale = 1;    // crop pixels a rectified pixel
    cv::Point2d origin;  // rectified pixel at the crop's pixel (0, 0)
};

struct LineRendering {
    double letter_px = 36;     // the line's box is brought to this height
    double rim = 0.3;          // ground around it, in box heights
    double smoothing = 0.045;  // deviation of the blur, in box heights; 0 for none
};

// Cuts `box` out of a layer. Beyond the picture the ground is carried on.
//   layer    CV_8UC1; not changed
// Throws std::invalid_argument if the layer is empty or not CV_8UC1, the box has no area or an
// option is out of range.
LineCrop cropLine(const cv::Mat& layer, const cv::Rect2d& box, const LineRendering& rendering = {});

}  // namespace vision
