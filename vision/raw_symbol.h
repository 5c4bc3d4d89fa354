#pragma once

#include <string>
#include <vector>

#include "models/reading.h"

namespace vision {

// One symbol as an engine answers it, before calibration.
struct RawSymbol {
    std::string text;
    double score = 0;                         // 0 to 1, the engine's own, no probability
    std::vector<models::Alternative> rivals;  // other characters with the engine's scores
    double left_px = 0, right_px = 0;         // rectified pixels
    bool starts_word = false;
};

}  // namespace vision
