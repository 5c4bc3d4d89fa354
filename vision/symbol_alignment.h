#pragma once

#include <vector>

#include "vision/raw_symbol.h"

namespace vision {

// For each symbol of `a` the index of the symbol of `b` that stands for it, -1 where there is none:
// the alignment with the fewest insertions, deletions and substitutions.
std::vector<int> alignSymbols(const std::vector<RawSymbol>& a, const std::vector<RawSymbol>& b);

// 1 minus the edit distance of the two texts over the length of the longer one, spaces between
// words counted; 0 when one of them is empty.
double agreementOf(const std::vector<RawSymbol>& a, const std::vector<RawSymbol>& b);

}  // namespace vision
