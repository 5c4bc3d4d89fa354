#pragma once

#include <string>

#include "models/confusion.h"
#include "models/reading.h"

namespace models {

struct MatchOptions {
    double insert_rate =
        0.02;                 // a seen cell with no letter behind it (stray ink), per cell, 0 to 1
    double skip_rate = 0.02;  // a letter that left no cell, per letter, 0 to 1
    bool open_left = false;   // the text may have lost letters beyond the line's first cell
    bool open_right = false;  //   or beyond its last, at no cost but their prior (hem, edge, fold)
};

// Natural logarithm of P(cells | the stamp said `truth`), summed over alignments by a pair hidden
// Markov model (match, insert, skip; after Durbin, Eddy, Krogh and Mitchison, Biological Sequence
// Analysis, 1998, chapter 4). Clear and doubtful cells are weighed by their alternatives and the
// confusion table, traces stand for some letter, lost stretches for their number of letters, and an
// unknown number for any (geometric, nine on average). A restored letter was not read: it weighs as
// a lost one. Spaces and full stops come and go more easily than letters. Where the line's letters
// stop being letters is given, not weighed: an unread cell costs nothing by being unread.
//   truth    UTF-8; may be empty
//   returns  a log probability, at most 0; -infinity only when an option forbids every alignment
// Throws std::invalid_argument when a rate is outside 0 to 1.
double logProbability(const Line& line, const std::string& truth,
                      const ConfusionTable& confusions = ConfusionTable::published(),
                      const MatchOptions& options = {});

}  // namespace models
