#include "models/tail_sums.h"

#include <algorithm>

namespace models {

TailSums::TailSums(const TextTrie& trie, const AlignmentPlaces& places,
                   const LetterMatches& matches)
    : trie_(trie),
      places_(places),
      matches_(matches),
      sums_(trie.endings().size() * places.size()),
      most_(trie.tails().size() * places.size()),
      is_weighed_(trie.endings().size(), false),
      has_most_(trie.tails().size(), false),
      behind_(places.size())
{
}

const double* TailSums::ofEnding(std::uint32_t ending)
{
    if (!is_weighed_[ending])
        weigh(ending);
    return &sums_[ending * places_.size()];
}

const double* TailSums::mostOf(std::uint32_t tail)
{
    double* most = &most_[tail * places_.size()];
    if (has_most_[tail])
        return most;
    for (const std::uint32_t ending : trie_.tails()[tail].endings) {
        const double* sums = ofEnding(ending);
        for (std::size_t p = 0; p < places_.size(); ++p)
            most[p] = std::max(most[p], sums[p]);
    }
    has_most_[tail] = true;
    return most;
}

// From what stands behind its first letter to what stands before it.
void TailSums::weigh(std::uint32_t ending)
{
    const TextTrie::Ending& at = trie_.endings()[ending];
    const double* rest = at.rest == TextTrie::no_ending ? places_.end().data() : ofEnding(at.rest);
    std::copy(rest, rest + places_.size(), behind_.begin());
    places_.gatherOnward(behind_.data());
    const double *stays = matches_.stays(at.letter), *steps = matches_.steps(at.letter);
    double* sums = &sums_[ending * places_.size()];
    const std::size_t last = places_.size() - 1;
    for (std::size_t p = 0; p < last; ++p)
        sums[p] = stays[p] * behind_[p] + steps[p] * behind_[p + 1];
    sums[last] = stays[last] * behind_[last];
    is_weighed_[ending] = true;
}

}  // namespace models
