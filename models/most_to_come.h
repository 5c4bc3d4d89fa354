#pragma once

#include <cstddef>
#include <vector>

#include "models/letter_matches.h"

namespace models {

// For a line of which a text has come to a place: the most that the rest of any text of so many
// letters can still multiply by, were each letter the likeliest for the cell that it falls on. A
// search of many texts leaves a branch by it.
class MostToCome {
public:
    //   longest  letters of the longest text
    MostToCome(const AlignmentPlaces& places, const LetterMatches& matches, std::size_t longest);

    // By place, of texts with at least so many letters to come, and with at most so many.
    const double* from(std::size_t letters) const { return &from_[letters * places_]; }
    const double* upTo(std::size_t letters) const { return &up_to_[letters * places_]; }

private:
    std::size_t places_;
    std::vector<double> from_, up_to_;  // [letters to come * places + place]
};

}  // namespace models
