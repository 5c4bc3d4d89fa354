#pragma once

#include <vector>

#include "vision/finder_cores.h"
#include "vision/found_line.h"
#include "vision/logistic_model.h"

namespace vision {

// What a found line's certainty is judged by.
struct FinderTraits {
    double mean = 0;    // log odds of core, the mean of the line's places
    double peak = 0;    // and the best of them
    double length = 0;  // log of its length in capital heights
    double accord = 0;  // of its places about the line's turn, 0 to 1
    double height = 0;  // log2(capital height in pixels / FinderTable::unit_px)
};

struct FinderLine {
    FoundLine line;  // pixels of the picture that was looked at
    FinderTraits traits;
};

// The lines in the network's answer to one picture.
//   returns  lines in no order, with the certainty of finderLineModel; empty when there are none
// Throws std::invalid_argument as coresOf does.
std::vector<FinderLine> linesOf(const FinderTable& table, const CoreOptions& options = {});

// The model of a line's certainty, and traits as the values of its terms. Fitted by
// `calibration finder`.
const LogisticModel& finderLineModel();
std::vector<double> termsOf(const FinderTraits& traits);

}  // namespace vision
