#pragma once

#include <opencv2/core.hpp>

#include "tests/support/synthetic_stamp.h"

namespace synthetic {

// Lays the options' ruler and thumb on the scene, with their shadows.
//   radiance  CV_32FC3 of the photo's size, before the light's own unevenness; changed in place
//   returns   CV_32FC1: 1 where the scene is still in sight, 0 under them
cv::Mat layProps(cv::Mat& radiance, const SceneOptions& options);

}  // namespace synthetic
