#include "models/best_alignment.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace models {

namespace {

constexpr double never = -std::numeric_limits<double>::infinity();

// How a place of the table was reached: over how many cells and letters.
struct Step {
    double log_weight = never;
    std::size_t cells = 0, letters = 0;
};

class BestTable {
public:
    BestTable(const std::vector<AlignedCell>& cells, const MatchText& text,
              const AlignmentPlan& plan, const GapRates& rates)
        : cells_(cells),
          text_(text),
          plan_(plan),
          rates_(rates),
          width_(text.letters.size() + 1),
          steps_((cells.size() + 1) * width_)
    {
    }

    BestAlignment best();

private:
    Step& at(std::size_t cell, std::size_t letter) { return steps_[cell * width_ + letter]; }
    void enter(std::size_t cell);
    void reach(std::size_t cell, std::size_t letter);
    void improve(Step& step, std::size_t cell, std::size_t letter, std::size_t cells,
                 std::size_t letters, double weight);
    std::vector<AlignedPair> pairsTo(std::size_t cell, std::size_t letter);

    const std::vector<AlignedCell>& cells_;
    const MatchText& text_;
    const AlignmentPlan& plan_;
    const GapRates& rates_;
    std::size_t width_;
    std::vector<Step> steps_;
};

void BestTable::improve(Step& step, std::size_t cell, std::size_t letter, std::size_t cells,
                        std::size_t letters, double weight)
{
    const double log_weight = at(cell - cells, letter - letters).log_weight + std::log(weight);
    if (log_weight > step.log_weight)
        step = {log_weight, cells, letters};
}

// The text begins before this cell, or its beginning lies beyond the first.
void BestTable::enter(std::size_t cell)
{
    const double weight = plan_.entry[cell];
    if (cell > 0) {
        if (std::log(weight) > at(cell, 0).log_weight)
            at(cell, 0) = {std::log(weight), 0, 0};
        return;
    }
    at(0, 0).log_weight = std::log(weight * (1 - plan_.cut_left));
    for (std::size_t j = 1; j < width_; ++j)
        at(0, j).log_weight = std::log(weight * plan_.cut_left * cutLengthShare(j));
}

// The best way to have taken so many cells and letters.
void BestTable::reach(std::size_t cell, std::size_t letter)
{
    Step& step = at(cell, letter);
    if (cell > 0) {
        const AlignedCell& last = cells_[cell - 1];
        if (last.weights->stretch)
            for (std::size_t taken = 0; taken <= letter; ++taken)
                improve(step, cell, letter, 1, taken, stretchLengthShare(*last.weights, taken));
        else if (letter > 0)
            improve(step, cell, letter, 1, 1, matchWeight(last, text_, letter - 1, rates_));
        improve(step, cell, letter, 1, 0, last.stray);
    }
    if (letter > 0)
        improve(step, cell, letter, 0, 1, rates_.none * text_.skip[letter - 1]);
}

std::vector<AlignedPair> BestTable::pairsTo(std::size_t cell, std::size_t letter)
{
    std::vector<AlignedPair> pairs;
    for (std::size_t beyond = width_ - 1; beyond > letter; --beyond)
        pairs.push_back({std::nullopt, beyond - 1});
    for (Step step = at(cell, letter); step.cells + step.letters > 0; step = at(cell, letter)) {
        const std::optional<std::size_t> shown =
            step.cells > 0 ? std::optional(cell - 1) : std::nullopt;
        for (std::size_t taken = 0; taken < step.letters; ++taken)
            pairs.push_back({shown, letter - 1 - taken});
        if (step.letters == 0)
            pairs.push_back({shown, std::nullopt});
        cell -= step.cells;
        letter -= step.letters;
    }
    while (letter > 0)
        pairs.push_back({std::nullopt, --letter});
    std::reverse(pairs.begin(), pairs.end());
    return pairs;
}

BestAlignment BestTable::best()
{
    double best = never;
    std::size_t end_cell = 0, end_letter = 0;
    const auto leave = [&](std::size_t cell, std::size_t letter, double weight) {
        const double log_weight = at(cell, letter).log_weight + std::log(weight * rates_.none);
        if (log_weight > best) {
            best = log_weight;
            end_cell = cell;
            end_letter = letter;
        }
    };
    const std::size_t last = cells_.size(), whole = width_ - 1;
    for (std::size_t i = 0; i <= last; ++i) {
        enter(i);
        for (std::size_t j = 0; j < width_; ++j)
            reach(i, j);
        leave(i, whole, plan_.exit[i] * (i == last ? 1 - plan_.cut_right : 1));
    }
    for (std::size_t j = 0; j < whole; ++j)
        leave(last, j, plan_.exit[last] * plan_.cut_right * cutLengthShare(whole - j));
    if (best == never)
        return {{}, never};
    return {pairsTo(end_cell, end_letter), best};
}

}  // namespace

BestAlignment bestAlignment(const std::vector<AlignedCell>& cells, const MatchText& text,
                            const AlignmentPlan& plan, const GapRates& rates)
{
    return BestTable(cells, text, plan, rates).best();
}

}  // namespace models
