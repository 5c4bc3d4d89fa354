#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "models/alignment_places.h"
#include "models/text_alignment.h"
#include "models/text_trie.h"

namespace models {

// What each letter of a trie multiplies a place's weight by (alignment_places.h): where it stays,
// and on the way to the next place, the rate of going on to the next letter included.
class LetterMatches {
public:
    LetterMatches(const TextTrie& trie, const std::vector<AlignedCell>& cells,
                  const AlignmentPlaces& places, const GapRates& rates);

    // By place.
    const double* stays(std::uint32_t letter) const { return &stays_[letter * places_]; }
    const double* steps(std::uint32_t letter) const { return &steps_[letter * places_]; }
    // By place, of the letter for which it is most.
    const std::vector<double>& mostStays() const { return most_stays_; }
    const std::vector<double>& mostSteps() const { return most_steps_; }

    // Of the step that is most of some letters', as TextTrie::Node::letters_below gives them, did
    // they always leave a cell; never less.
    double likeliestStep(std::size_t place, std::uint64_t letters) const;

private:
    struct LikelyLetter {
        std::uint64_t bit;
        double weight;
    };
    void weigh(std::uint32_t letter, double skip, const std::vector<AlignedCell>& cells,
               const AlignmentPlaces& places, const GapRates& rates);
    void rankLetters(const TextTrie& trie, std::size_t place);

    std::size_t places_;
    std::vector<double> stays_, steps_;  // [letter * places + place]
    std::vector<double> most_stays_, most_steps_;
    // By place: letters that are likelier than others, best first, and the most of the others.
    std::vector<std::vector<LikelyLetter>> likely_;
    std::vector<double> unlikely_;
};

}  // namespace models
