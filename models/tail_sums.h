#pragma once

#include <vector>

#include "models/letter_matches.h"
#include "models/text_trie.h"

namespace models {

// What each ending of a tail multiplies a place's weight by when the tail begins there: worked out
// once, it serves every text that ends so.
class TailSums {
public:
    TailSums(const TextTrie::Tail& tail, const AlignmentPlaces& places,
             const LetterMatches& matches);

    // By place, the weights of going on with this ending to the end of the text.
    const double* of(std::size_t ending) const { return &sums_[ending * places_]; }
    // The most of all endings.
    const double* most() const { return most_.data(); }

private:
    void weigh(const MatchText& text, const AlignmentPlaces& places, const LetterMatches& matches,
               double* sums) const;

    std::size_t places_;
    std::vector<double> sums_, most_;
};

}  // namespace models
