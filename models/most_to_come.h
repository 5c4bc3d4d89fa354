#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include "models/text_alignment.h"

namespace models {

// Which of a text's alignments count: all, or those in which the plan's right cut has taken its
// end.
enum class Endings { All, CutOnly };

// For a line of which i cells are taken: the most that the rest of any text of so many letters can
// still multiply by, were each letter the likeliest for the cell that it falls on. A search of many
// texts leaves a branch by it.
class MostToCome {
public:
    //   most_of_letters  by cell, the highest weight of matching any letter
    //   longest          letters of the longest text
    MostToCome(const std::vector<AlignedCell>& cells, const std::vector<double>& most_of_letters,
               const AlignmentPlan& plan, const GapRates& rates, Endings endings,
               std::size_t longest);

    // Of texts with `shortest` to `longest` letters to come.
    double ofLength(std::size_t taken, std::size_t shortest, std::size_t longest) const
    {
        const std::size_t row = taken * width_;
        return std::min(from_[row + shortest], up_to_[row + longest]);
    }
    // Of texts with at most so many.
    double ofAnyLength(std::size_t taken, std::size_t longest) const
    {
        return up_to_[taken * width_ + longest];
    }

private:
    double behindStretch(const CellWeights& stretch, std::size_t taken, std::size_t letters,
                         const std::vector<double>& exact) const;

    std::size_t width_ = 0;             // lengths in a row
    std::vector<double> from_, up_to_;  // [taken * width + letters to come], at least and at most
};

}  // namespace models
