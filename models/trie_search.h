#pragma once

#include <cstdint>
#include <vector>

#include "models/alignment_places.h"
#include "models/text_alignment.h"
#include "models/text_trie.h"

namespace models {

// One text of a trie that a line can hold.
struct FoundText {
    std::uint32_t text = 0;  // its number
    double odds = 0;  // the sum over all alignments, as logAlignmentSum has it before the log
};

// What is too unlikely to be looked for: texts whose odds x worth stay below `least`, or below
// `share` of the best odds x worth that a text has. With both 0 every text is found.
struct SearchLimits {
    double least = 0, share = 0;
    double best_before = 0;                      // odds x worth of a text found elsewhere
    const std::vector<double>* worth = nullptr;  // 0 to 1, by text; 1 for all where it is missing

    double worthOf(std::uint32_t text) const { return worth ? (*worth)[text] : 1; }
};

// Matches a line against every text of a trie at once: the sums of logAlignmentSum, each letter of
// the trie worked out once, branches left that cannot come up to the limits (branch and bound).
// Texts come in no order.
std::vector<FoundText> searchTrie(const TextTrie& trie, const std::vector<AlignedCell>& cells,
                                  const AlignmentPlan& plan, const GapRates& rates,
                                  const SearchLimits& limits, Endings endings = Endings::All);

// The mean odds of all texts of a trie; those of less than `least` count as 0. 0 without texts.
double meanOdds(const TextTrie& trie, const std::vector<AlignedCell>& cells,
                const AlignmentPlan& plan, const GapRates& rates, double least);

}  // namespace models
