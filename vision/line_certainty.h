#pragma once

#include <string>
#include <vector>

#include <opencv2/core.hpp>

#include "models/reading.h"
#include "vision/ink.h"

namespace vision {

// One symbol as the engine answers it, before calibration.
struct RawSymbol {
    std::string text;
    double score = 0;                         // 0 to 1, the engine's own, no probability
    std::vector<models::Alternative> rivals;  // other characters with the engine's scores
    double left_px = 0, right_px = 0;         // rectified pixels
    bool starts_word = false;
};

// Whether there is ink enough to ask an engine at all: engines read letters into bare cloth.
bool inkStands(const InkEvidence& ink);

// Turns an engine's symbols into a line of cells with calibrated certainties: a space cell between
// words, cells that are sure Clear, others Doubtful, Traces where nothing credible was read.
//   box      the line's box, rectified pixels
//   by       which reader vouches for the cells
models::Line lineFrom(const std::vector<RawSymbol>& symbols, const cv::Rect2d& box,
                      const InkEvidence& ink, const std::string& by);

}  // namespace vision
