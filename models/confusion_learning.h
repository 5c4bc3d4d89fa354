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
// Lines are joined in order, those with boxes by where they stand, others where half of their
// letters agree. A line without a counterpart teaches nothing, nor does one typed in the place of
// another that it has hardly a letter of.
std::vector<TaughtLetter> lettersTaught(const Reading& engines, const Reading& persons);

// Each share of the starting table counts as much as so many letters seen, and as much as so many
// corrections of its kind, whichever is more. So ten corrections of a kind move its share by about
// a hundredth at most, and at most double it, however rare the kind was: one letter then weighs at
// most twice as much for a maker, which against the register of examples moves no maker's share by
// more than a tenth, and no first candidate that led by a tenth from its place (the tests).
// Hundreds do: three hundred of a kind that the table does not list, in as many letters, make it
// thirty times as frequent, a thousand as frequent as a published look-alike. People correct what
// is wrong and leave what is right, so that corrections tell less of shares than letters would.
inline constexpr double letters_before_learning = 1000;
inline constexpr double corrections_before_learning = 10;

// A table relearnt from corrections: each share of `start` as if it had been seen before, and what
// was taught beside it. What one letter is taken for stays below nine tenths in all.
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
