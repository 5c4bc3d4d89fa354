#pragma once

#include <opencv2/core.hpp>

namespace vision {

// How plainly ink stands in one line's box.
struct InkEvidence {
    double step = 0;   // from ground to ink, share of the ground's level, 0 to 1
    double ratio = 0;  // that step over the spread of the ground around the line
    double cover = 0;  // share of the box that is ink, 0 to 1
};

// Measures the ink in `box` against the ground around it.
//   grey     CV_8UC1, ink dark; not changed
//   box      may reach beyond the picture; all zero evidence when nothing of it lies inside
// Throws std::invalid_argument if `grey` is empty or not CV_8UC1.
InkEvidence measureInk(const cv::Mat& grey, const cv::Rect2d& box);

}  // namespace vision
