#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace models {

// Fewest insertions, deletions and replacements of a user-perceived character that turn one text
// into the other (Levenshtein). 0 for equal texts.
std::size_t editDistance(const std::string& a, const std::string& b);

// One step of an alignment: the elements joined, or one side alone.
struct AlignedPair {
    std::optional<std::size_t> first, second;  // indices into the two sequences; not both nullopt

    bool operator==(const AlignedPair&) const = default;
};

// The alignment of two sequences with the least total cost (dynamic programming after Needleman
// and Wunsch), both orders kept.
//   join_cost  of pairing element i of the first with element j of the second
//   gap_cost   of leaving one element of either alone
std::vector<AlignedPair> alignSequences(
    std::size_t first_count, std::size_t second_count,
    const std::function<double(std::size_t, std::size_t)>& join_cost, double gap_cost);

}  // namespace models
