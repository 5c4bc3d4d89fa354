#pragma once

#include <vector>

#include "vision/letter_chains.h"
#include "vision/logistic_model.h"
#include "vision/piece_grid.h"

namespace vision {

// What tells a line of letters from weave, stitching and bars.
struct ChainTraits {
    double letters = 0;          // members
    double contrast = 0;         // median, log grey level
    double separation = 0;       // median
    double clutter = 0;          // like pieces beside the chain, a square letter height
    double height_px = 0;        // of the letters
    double height_spread = 0;    // standard deviation of member heights over their mean
    double edge_misfit = 0;      // how far tops and bottoms stray from straight lines, in heights
    double contrast_spread = 0;  // standard deviation of log contrast
    double stroke_spread = 0;    // standard deviation of log stroke width
    double stroke_share = 0;     // median stroke width over letter height
    double width_spread = 0;     // standard deviation of member widths over letter height
    double narrow_share = 0;     // share of members under a quarter as wide as high
    double gap_spread = 0;       // standard deviation of the gaps, in letter heights
    double mean_gap = 0;         // in letter heights
    double mean_fill = 0;        // of the hulls
};

ChainTraits traitsOf(const LetterChain& chain, const std::vector<LetterPiece>& pieces,
                     const PieceGrid& grid);

// The model of a chain's score, and traits as the values of its terms.
const LogisticModel& chainModel();
std::vector<double> termsOf(const ChainTraits& traits);

// Probability that the chain is a line of text, from its traits.
double scoreChain(const LetterChain& chain, const std::vector<LetterPiece>& pieces,
                  const PieceGrid& grid);

}  // namespace vision
