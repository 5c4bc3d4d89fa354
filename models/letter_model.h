#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "models/cell_weights.h"

namespace models {

// How makers' marks are spelt, whoever the maker: each letter given the one before it, counted in
// the register's marks and smoothed with how often letters occur in names at all. It explains the
// marks of makers that the register does not know.
class LetterModel {
public:
    // `texts` are the marks; their letters and the common ones become known to `ids`.
    LetterModel(const std::vector<std::string>& texts, LetterIds& ids);

    // P(cells first <= i < end | the text of some mark as long as they are) / P(cells | other
    // text). `cells` were weighed with the ids that the model was made with.
    double odds(const std::vector<CellWeights>& cells, std::size_t first, std::size_t end) const;

    std::size_t letters() const { return first_.size(); }

private:
    std::vector<double> first_;              // of a mark's first letter
    std::vector<std::vector<double>> next_;  // [letter before][letter]
};

}  // namespace models
