#pragma once

#include <cstdint>

#include "tests/support/synthetic/surface.h"

namespace synthetic {

struct LeatherOptions {
    cv::Vec3b colour_bgr{38, 66, 112};
    double grain_px = 5;      // size of the grain's cells
    double unevenness = 0.5;  // 0 to 1, of colour and grain
    std::uint32_t seed = 1;
};

// A piece of grained leather. Throws std::invalid_argument for a grain below 2 pixels.
Surface leather(cv::Size size, const LeatherOptions& options);

}  // namespace synthetic
