#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "models/cell_weights.h"

namespace models {

// How makers' marks are spelt, whoever the maker: each letter given the one before it and whether
// that one began a word, counted in the register's marks and smoothed with how often letters occur
// in names at all. It explains the marks of makers that the register does not know.
class LetterModel {
public:
    // `texts` are the marks; their letters and the common ones become known to `ids`.
    LetterModel(const std::vector<std::string>& texts, LetterIds& ids);

    // P(cells first <= i < end | the letters of some mark, as many as they are) / P(cells | other
    // text); their number is not weighed. `cells` were weighed with the ids of this model, or more.
    double odds(const std::vector<CellWeights>& cells, std::size_t first, std::size_t end) const;

private:
    using Shares = std::vector<double>;     // by letter
    using ByPlace = std::array<Shares, 2>;  // letters within a word, and those that begin one

    void countPairs(const std::vector<std::vector<std::size_t>>& texts, const Shares& general,
                    const Shares& any);
    ByPlace next(const ByPlace& now) const;

    std::vector<bool> begins_word_behind_;       // does the letter behind this one begin a word?
    Shares first_;                               // of a mark's first letter
    std::array<std::vector<Shares>, 2> behind_;  // [the letter before began a word][it][letter]
};

}  // namespace models
