#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "models/confusion.h"
#include "models/reading.h"

namespace models {

// What stood there, by a person, and what a reader had seen there; one character each, maybe the
// same.
struct TaughtLetter {
    std::string truth, seen;

    bool operator==(const TaughtLetter&) const = default;
};

// What a person's reading teaches of an engine's reading of the same stamp: of the cells that the
// person typed, those that are clear and stand where the engine saw a letter. Cells left as they
// were teach nothing, nor does a reading made with makers in view, or of which that is not recorded
// (Reading::candidates_were_shown): a name in view bends what one sees.
std::vector<TaughtLetter> lettersTaught(const Reading& engines, const Reading& persons);

// The starting table counts as much as so many letters seen of each kind: ten corrections move a
// share by about a hundredth at most.
inline constexpr double letters_before_learning = 1000;

// A table relearnt from corrections: the shares of `start` as if they had been seen on
// letters_before_learning letters of each kind, and what was taught beside them (the mean of a
// Dirichlet distribution). What one letter is taken for stays below nine tenths in all.
ConfusionTable learnConfusions(const std::vector<TaughtLetter>& letters,
                               const ConfusionTable& start = ConfusionTable::published());

// One way in which a letter was taken for another, as a table tells it.
struct ConfusionChange {
    std::string truth, seen;
    double start = 0, learnt = 0;  // P(seen | truth) before and after
    std::size_t count = 0;         // corrections of this kind
};

// The ways that were corrected, the most frequent first.
std::vector<ConfusionChange> confusionChanges(
    const std::vector<TaughtLetter>& letters,
    const ConfusionTable& start = ConfusionTable::published());

}  // namespace models
