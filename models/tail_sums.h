#pragma once

#include <vector>

#include "models/letter_matches.h"
#include "models/text_trie.h"

namespace models {

// What each ending of a tail multiplies a line by that has taken some cells when the tail begins:
// worked out once, it serves every text that ends so. The line has no stretches, and the text's
// beginning is not cut off.
class TailSums {
public:
    TailSums(const TextTrie::Tail& tail, const LetterMatches& matches,
             const std::vector<AlignedCell>& cells, const AlignmentPlan& plan,
             const GapRates& rates);

    // By cells taken, the weights of going on with this ending to the end of the text.
    const double* of(std::size_t ending) const { return &sums_[ending * width_]; }
    // The most of all endings.
    const double* most() const { return most_.data(); }
    // What the plan's right cut makes of the row before: to be multiplied by cut ends there.
    double cutOf(std::size_t ending) const { return cuts_[ending]; }
    double mostCut() const { return most_cut_; }

private:
    void weigh(std::size_t ending, const MatchText& text, const LetterMatches& matches,
               const std::vector<AlignedCell>& cells, const AlignmentPlan& plan,
               const GapRates& rates);

    std::size_t width_;
    std::vector<double> sums_, most_, cuts_;
    double most_cut_ = 0;
};

}  // namespace models
