#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "vision/line_crop.h"

namespace vision {

// Finds the rows of writing in a straight picture, for stamps whose lines nobody has located.
//   grey     CV_8UC1, ink dark, writing level to within a few degrees; not changed
//   returns  straight rows, top to bottom; empty when none stands out
// Throws std::invalid_argument if `grey` is empty or not CV_8UC1.
std::vector<LineRow> findTextRows(const cv::Mat& grey);

// The row of a picture that is one line of writing as a whole, with a rim above and below it.
LineRow rowOfWhole(const cv::Mat& picture);

}  // namespace vision
