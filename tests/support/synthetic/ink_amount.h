#pragma once

#include <opencv2/core.hpp>

#include "tests/support/synthetic/camera.h"
#include "tests/support/synthetic/measure.h"

namespace synthetic {

// A scene without a stamp's ink and with all of it: CV_32FC3, linear light.
struct WithAndWithout {
    cv::Mat without, with;
};

// The share of its ink at which a stamp has the contrast in the picture, 0 to 1.
// Throws std::invalid_argument if all of its ink does not reach it.
double inkAmountFor(double contrast, const WithAndWithout& scene, const ContrastPlaces& places,
                    const CameraOptions& camera);

}  // namespace synthetic
