#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "vision/finder_cores.h"

namespace vision {

// The middle of a bent core from its left end to its right one, traced place by place and smoothed;
// at most once around a ring.
//   capital_px  height of the line's capitals
//   returns     points about half a capital apart; fewer than three where the core is too short to
//               have a course
std::vector<cv::Point2f> courseOf(const LineCore& core, double capital_px);

}  // namespace vision
