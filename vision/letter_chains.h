#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "vision/letter_pieces.h"
#include "vision/locate.h"

namespace vision {

// Pieces of like height that follow one another along a straight line: perhaps a line of text.
struct LetterChain {
    std::vector<int> members;  // indices into the pieces, along the direction
    Quad corners;              // tight around the letters, clockwise from the top left as seen with
                               //   the line running to the right within 90 degrees of the x axis
    float angle_deg = 0;       // clockwise from the x axis, -90 < angle <= 90
    float height_px = 0;       // of its letters, most of them
    double score = 0;          // 0 to 1, probability that it is text
};

struct ChainOptions {
    double widest_gap = 1.2;   // between two letters of one line, in letter heights
    double max_tilt_deg = 90;  // lines steeper than this are left out, 0 to 90
    int least_letters = 2;     // shorter chains are left out
};

// Chains letter pieces into lines. Of chains that cover the same ink the best one is kept.
//   returns  chains, best first; empty when there are none
// Throws std::invalid_argument if an option is out of range.
std::vector<LetterChain> chainLetters(const std::vector<LetterPiece>& pieces,
                                      const ChainOptions& options = {});

}  // namespace vision
