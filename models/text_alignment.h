#pragma once

#include <cstddef>
#include <vector>

#include "models/cell_weights.h"
#include "models/text_match.h"

// The pair hidden Markov model behind logProbability, with the cells' weights worked out once for
// many texts, and with entry and exit at any cell so that a mark can stand within a line.
namespace models {

// Each further letter of an unknown number is this likely; a stretch has nine letters on average.
inline constexpr double going_on = 0.9;

// A text to be matched: letters by number and how easily each leaves no cell.
struct MatchText {
    std::vector<std::size_t> letters;
    std::vector<double> skip;  // 0 to 1, one a letter
};

// How easily a full stop, a comma or a space leaves no cell: they come and go more easily than
// letters, which do at `skip_rate`.
double blankSkip(double skip_rate);

MatchText makeMatchText(const std::string& text, LetterIds& ids, double skip_rate);

// Weights of where the text begins and ends; a plan for n cells has n + 1 places.
struct AlignmentPlan {
    std::vector<double> entry;  // of beginning before cell i
    std::vector<double> exit;   // of being over before cell i
    double cut_left = 0;        // probability that the text's beginning lies beyond the first cell
    double cut_right = 0;       //   or its end beyond the last; its length is geometric
};

// The rates of one gap between letters, from MatchOptions.
struct GapRates {
    explicit GapRates(double insert_rate);
    double letter, dot, space;  // of a stray cell
    double none;                // of going on to the next letter; the four sum to 1
};

// P(what is seen | ink or dirt with no letter behind it) times its rate.
double strayWeight(const CellWeights& cell, const GapRates& rates);

// One cell as the model needs it.
struct AlignedCell {
    const CellWeights* weights = nullptr;
    double divisor = 1;  // what its weights are divided by: 1, or `other` to get odds
    double stray = 0;    // of being ink without a letter, divided
};

// P(what the cell shows | this letter of the text stood there) times the rate of going on to it.
double matchWeight(const AlignedCell& cell, const MatchText& text, std::size_t letter,
                   const GapRates& rates);

// P(a cut has taken so many letters), 1 or more.
double cutLengthShare(std::size_t letters);

// P(a stretch stands for so many letters).
double stretchLengthShare(const CellWeights& stretch, std::size_t letters);

// Cells whose weights are odds against other text. They point into the weights.
std::vector<AlignedCell> cellsAsOdds(const std::vector<CellWeights>& weights,
                                     const GapRates& rates);

// Log of the sum over all alignments; -infinity when there is none.
double logAlignmentSum(const std::vector<AlignedCell>& cells, const MatchText& text,
                       const AlignmentPlan& plan, const GapRates& rates);

}  // namespace models
