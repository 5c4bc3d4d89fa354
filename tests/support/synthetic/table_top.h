#pragma once

#include <cstdint>

#include "tests/support/synthetic/surface.h"
#include "tests/support/synthetic_stamp.h"

namespace synthetic {

// The table that a piece lies on: planks, a plain dark cloth, or grey board.
Surface tableTop(cv::Size size, Table kind, std::uint32_t seed);

}  // namespace synthetic
