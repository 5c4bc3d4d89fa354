#include "models/tail_sums.h"

#include <algorithm>

namespace models {

TailSums::TailSums(const TextTrie::Tail& tail, const AlignmentPlaces& places,
                   const LetterMatches& matches)
    : places_(places.size()), sums_(tail.endings.size() * places_), most_(places_, 0)
{
    for (std::size_t ending = 0; ending < tail.endings.size(); ++ending) {
        double* sums = &sums_[ending * places_];
        weigh(tail.endings[ending], places, matches, sums);
        for (std::size_t p = 0; p < places_; ++p)
            most_[p] = std::max(most_[p], sums[p]);
    }
}

// Backward from the ending's last letter to its first.
void TailSums::weigh(const MatchText& text, const AlignmentPlaces& places,
                     const LetterMatches& matches, double* sums) const
{
    std::copy(places.end().begin(), places.end().end(), sums);
    for (std::size_t j = text.letters.size(); j-- > 0;) {
        places.gatherOnward(sums);
        const auto letter = static_cast<std::uint32_t>(text.letters[j]);
        const double *stays = matches.stays(letter), *steps = matches.steps(letter);
        for (std::size_t p = 0; p + 1 < places_; ++p)
            sums[p] = stays[p] * sums[p] + steps[p] * sums[p + 1];
        sums[places_ - 1] *= stays[places_ - 1];
    }
}

}  // namespace models
