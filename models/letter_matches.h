#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "models/text_alignment.h"
#include "models/text_trie.h"

namespace models {

// What each letter of a trie multiplies by where a cell of a line is matched with it, the rate of
// going on to the next letter included.
class LetterMatches {
public:
    LetterMatches(const TextTrie& trie, const std::vector<AlignedCell>& cells,
                  const GapRates& rates);

    // By cell; of a stretch, which no single letter matches, nothing that means anything.
    const double* ofLetter(std::uint32_t letter) const { return weights_.data() + letter * cells_; }
    // By cell, of the likeliest letter of all.
    const std::vector<double>& most() const { return most_; }

    // Of the likeliest of some letters, as TextTrie::Node::letters_below gives them; never less.
    double likeliest(std::size_t cell, std::uint64_t letters) const;

private:
    struct LikelyLetter {
        std::uint64_t bit;
        double weight;
    };
    void rankLetters(const TextTrie& trie, std::size_t cell);

    std::size_t cells_;
    std::vector<double> weights_;  // [letter * cells + cell]
    std::vector<double> most_;
    // By cell: letters that are likelier than others, best first, and the most of the others.
    std::vector<std::vector<LikelyLetter>> likely_;
    std::vector<double> unlikely_;
};

}  // namespace models
