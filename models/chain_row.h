#pragma once

#include <cstdint>
#include <vector>

#include "models/letter_chain.h"
#include "models/text_alignment.h"

namespace models {

// The forward table of the alignment of a line with whatever text a chain can spell: a row of the
// chain's states. Where letters are unread a row would hold thousands of states; the likeliest are
// kept, with the weight of all.
class ChainRow {
public:
    //   skip  by letter, how easily it leaves no cell
    ChainRow(const LetterChain& chain, const std::vector<double>& skip, const GapRates& rates);

    // Log of the sum over all texts of the chain and all alignments; -infinity when there is none.
    double logSum(const std::vector<AlignedCell>& cells, const AlignmentPlan& plan);

    // Of each unread cell, P(letter | the cells before it), by letter; nothing of other cells.
    std::vector<std::vector<double>> lettersOf(const std::vector<AlignedCell>& cells,
                                               const AlignmentPlan& plan);

private:
    struct Live {
        std::uint32_t state = 0;
        double weight = 0;
    };

    void begin(double weight, double cut);
    void leave(double weight, double cut);
    void takeCell(const AlignedCell& cell, double entry);
    void takeStretch(const CellWeights& stretch);
    void takeLetter(const AlignedCell& cell);
    std::vector<double> comingLetters() const;
    void skipLetters();
    void add(std::uint32_t state, double weight);
    void gather();
    void rescale();
    double sum() const;

    const LetterChain& chain_;
    const std::vector<double>& skip_;
    const GapRates& rates_;
    std::vector<Live> row_, skipped_;
    std::vector<double> weights_;         // by state, while a row is put together
    std::vector<std::uint32_t> touched_;  // states that have one
    std::vector<double> seen_, onward_;   // by letter
    double total_ = 0, log_scale_ = 0;
    double entered_ = 1;  // what a weight of 1 is worth on the present scale
};

}  // namespace models
