#pragma once

#include <opencv2/core.hpp>

namespace vision {

// One line cut out and brought to the size a recogniser likes.
struct LineCrop {
    cv::Mat grey;        // CV_8UC1, ink dark, a rim of ground on every side
    double scale = 1;    // crop pixels a rectified pixel
    cv::Point2d origin;  // rectified pixel at the crop's pixel (0, 0)
};

// Cuts `box` out of a layer so that its height becomes `letter_px`, with a rim of `rim` box
// heights. Beyond the picture the ground is carried on.
//   layer    CV_8UC1; not changed
// Throws std::invalid_argument if the layer is empty or not CV_8UC1, or the box has no area.
LineCrop cropLine(const cv::Mat& layer, const cv::Rect2d& box, double letter_px, double rim);

}  // namespace vision
