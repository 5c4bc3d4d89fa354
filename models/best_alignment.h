#pragma once

#include <vector>

#include "models/alignment.h"
#include "models/text_alignment.h"

namespace models {

struct BestAlignment {
    // In reading order: `first` is a cell, `second` a letter of the text. A cell with a letter
    // shows it, a cell alone is ink without a letter, a letter alone left no cell or lies beyond an
    // end that was cut off. A stretch has one pair for each letter that it took. Cells before the
    // text begins and behind its end are not among them.
    std::vector<AlignedPair> pairs;
    double log_weight = 0;  // natural log; -infinity, without pairs, where there is none
};

// The likeliest single alignment of a line with a text (Viterbi), where logAlignmentSum sums over
// all. Where two are equally likely, cells are matched rather than left alone.
BestAlignment bestAlignment(const std::vector<AlignedCell>& cells, const MatchText& text,
                            const AlignmentPlan& plan, const GapRates& rates);

}  // namespace models
