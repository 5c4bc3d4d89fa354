#pragma once

#include <cstdint>

#include "tests/support/sample_scenes.h"
#include "tests/support/synthetic_stamp.h"

namespace bench {

// A photograph of one mark on cloth or leather at any angle, with the numbers of one of the sample
// levels but for its tilt: height of its capitals, contrast, share lost, lines. Worn in the ways
// that marks are. The same level and seed give the same photograph.
// Throws std::invalid_argument for NotStamps.
synthetic::DrawnPhoto levelPhoto(SampleLevel level, std::uint32_t seed);

// A photograph of the kind without a mark, some with a printed pattern or a rule without figures.
synthetic::DrawnPhoto barePhoto(std::uint32_t seed);

}  // namespace bench
