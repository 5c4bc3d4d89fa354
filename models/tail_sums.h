#pragma once

#include <vector>

#include "models/letter_matches.h"
#include "models/text_trie.h"

namespace models {

// What a trie's endings multiply a place's weight by when they begin there: worked out once, when
// first asked for, they serve every text that ends so.
class TailSums {
public:
    TailSums(const TextTrie& trie, const AlignmentPlaces& places, const LetterMatches& matches);

    // By place, the weights of going on with this ending to the end of the text.
    const double* ofEnding(std::uint32_t ending);
    // By place, the most of all endings of a tail.
    const double* mostOf(std::uint32_t tail);

private:
    void weigh(std::uint32_t ending);

    const TextTrie& trie_;
    const AlignmentPlaces& places_;
    const LetterMatches& matches_;
    std::vector<double> sums_, most_;          // [ending or tail * places + place]
    std::vector<bool> is_weighed_, has_most_;  // by ending, by tail
    std::vector<double> behind_;
};

}  // namespace models
