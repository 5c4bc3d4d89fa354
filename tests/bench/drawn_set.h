#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "tests/support/synthetic_stamp.h"

namespace bench {

enum class Wear { Easy, Medium, Hard };

const char* nameOf(Wear wear);

// A random scene with one stamp of one to three lines at any angle, letters 20 to 70 px high, of
// the given wear. The same seed gives the same scene but for its wear.
synthetic::SceneOptions stampedScene(std::uint32_t seed, Wear wear);

// The same kind of scene with nothing on it.
synthetic::SceneOptions bareScene(std::uint32_t seed);

}  // namespace bench
