#pragma once

#include <opencv2/core.hpp>

#include "tests/support/synthetic/lighting.h"
#include "tests/support/synthetic_stamp.h"

namespace synthetic {

// The scene's light as it falls on something turned clockwise by so much.
LightOptions lightOn(const SceneOptions& options, double turned_deg);

// The table, CV_32FC3 of the photo's size, with the shadow of the piece on it.
//   mask  CV_32FC1 of the photo's size, 1 where the piece lies
cv::Mat tableAround(const cv::Mat& mask, const SceneOptions& options);

// CV_32FC1 of the photo's size: how bright the light is at each place against what the options say
// of it, with the shadows that fall there.
cv::Mat lightField(cv::Size size, const SceneLight& light, cv::RNG& random);

}  // namespace synthetic
