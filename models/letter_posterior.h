#pragma once

#include <cstddef>
#include <vector>

#include "models/text_alignment.h"

namespace models {

// Which of a text's letters each cell shows, over all alignments of a line with the text (forward
// and backward sums of logAlignmentSum's model).
class LetterPosterior {
public:
    // Lines of at most a few hundred cells, texts of at most sixty letters.
    LetterPosterior(const std::vector<AlignedCell>& cells, const MatchText& text,
                    const AlignmentPlan& plan, const GapRates& rates);

    // The sum over all alignments; logAlignmentSum is its log. 0 where there is none.
    double total() const { return total_; }

    // P(this cell shows this letter of the text | the line holds the text), 0 to 1. What is left
    // over 1 for a cell: it shows none of them. 0 for a stretch.
    double share(std::size_t cell, std::size_t letter) const;

private:
    void fillForward();
    void fillBackward();
    double stretchSum(std::size_t cell, std::size_t letter, bool forward) const;
    double& at(std::vector<double>& table, std::size_t cell, std::size_t letter) const
    {
        return table[cell * width_ + letter];
    }
    double of(const std::vector<double>& table, std::size_t cell, std::size_t letter) const
    {
        return table[cell * width_ + letter];
    }

    const std::vector<AlignedCell>& cells_;
    const MatchText& text_;
    const AlignmentPlan& plan_;
    const GapRates& rates_;
    std::size_t width_;
    // [cells taken][letters taken]: of all ways there, and of all ways on from there.
    std::vector<double> forward_, backward_;
    double total_ = 0;
};

}  // namespace models
