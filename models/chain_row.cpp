#include "models/chain_row.h"

#include <algorithm>
#include <cmath>

namespace models {

namespace {

constexpr std::size_t most_states = 128;
constexpr double least_of_likeliest = 1e-5;  // a state that weighs less is left
constexpr double least_skipped = 1e-4;       // of the row's weight: less is not followed
constexpr double negligible = 1e-10;         // of the row's weight: one letter's worth
constexpr int most_skipped_in_row = 2;
// Of a text whose letters nobody read: that it goes on, and the chance of one number of letters
// that the hem has taken, as they are for marks.
constexpr double goes_on = 0.93, number_taken = 0.7 * (1 - going_on);

// That a text goes on for as many letters as a stretch stands for.
double lasts(const CellWeights& stretch)
{
    const double least = std::pow(goes_on, stretch.least);
    if (!stretch.most)
        return least * (1 - going_on) / (1 - going_on * goes_on);
    double sum = 0, on = least;
    for (int n = stretch.least; n <= *stretch.most; ++n, on *= goes_on)
        sum += on;
    return sum / (*stretch.most - stretch.least + 1);
}

}  // namespace

ChainRow::ChainRow(const LetterChain& chain, const std::vector<double>& skip, const GapRates& rates)
    : chain_(chain),
      skip_(skip),
      rates_(rates),
      weights_(chain.size(), 0),
      seen_(skip.size(), 1),
      onward_(skip.size(), 0)
{
}

double ChainRow::sum() const
{
    double all = 0;
    for (const Live& live : row_)
        all += live.weight;
    return all;
}

void ChainRow::add(std::uint32_t state, double weight)
{
    if (weight <= 0)
        return;
    if (weights_[state] == 0)
        touched_.push_back(state);
    weights_[state] += weight;
}

// Makes the row of what was put together: the likeliest states, which stand for the others too.
void ChainRow::gather()
{
    row_.clear();
    double most = 0, all = 0;
    for (const std::uint32_t state : touched_) {
        most = std::max(most, weights_[state]);
        all += weights_[state];
    }
    for (const std::uint32_t state : touched_) {
        if (weights_[state] > least_of_likeliest * most)
            row_.push_back({state, weights_[state]});
        weights_[state] = 0;
    }
    touched_.clear();
    if (row_.size() > most_states) {
        std::nth_element(row_.begin(), row_.begin() + most_states, row_.end(),
                         [](const Live& a, const Live& b) { return a.weight > b.weight; });
        row_.resize(most_states);
    }
    const double kept = sum();
    if (kept > 0)
        for (Live& live : row_)
            live.weight *= all / kept;
}

void ChainRow::begin(double weight, double cut)
{
    row_ = {{LetterChain::at_start, weight * (1 - cut)}};
    if (weight * cut > 0)
        row_.push_back({LetterChain::anywhere, weight * cut * number_taken});
    skipLetters();
}

// Letters that leave no cell lead on to further states.
void ChainRow::skipLetters()
{
    const double least = least_skipped * sum();
    skipped_ = row_;
    for (const Live& live : row_)
        add(live.state, live.weight);
    for (int in_row = 0; in_row < most_skipped_in_row && !skipped_.empty(); ++in_row) {
        const std::vector<Live> from = std::move(skipped_);
        skipped_.clear();
        for (const Live& live : from) {
            if (live.weight < least)
                continue;
            const float* shares = chain_.shares(live.state);
            const std::uint32_t* next = chain_.next(live.state);
            for (std::size_t letter = 0; letter < skip_.size(); ++letter) {
                const double weight = live.weight * rates_.none * shares[letter] * skip_[letter];
                if (weight < least)
                    continue;
                add(next[letter], weight);
                skipped_.push_back({next[letter], weight});
            }
        }
    }
    gather();
}

void ChainRow::leave(double weight, double cut)
{
    if (weight <= 0)
        return;
    double ended = 0, cut_off = 0;
    for (const Live& live : row_) {
        ended += live.weight * chain_.end(live.state);
        cut_off += live.weight * (1 - chain_.end(live.state));
    }
    total_ += weight * rates_.none * ((1 - cut) * ended + cut * number_taken * cut_off);
}

void ChainRow::takeLetter(const AlignedCell& cell)
{
    const CellWeights& weights = *cell.weights;
    for (std::size_t letter = 0; letter < seen_.size(); ++letter)
        seen_[letter] = rates_.none * (1 - skip_[letter]) *
                        (weights.unread ? 1 : weights.of_letter[letter] / cell.divisor);
    const double least = negligible * sum();
    for (const Live& live : row_) {
        const float* shares = chain_.shares(live.state);
        const std::uint32_t* next = chain_.next(live.state);
        for (std::size_t letter = 0; letter < seen_.size(); ++letter)
            onward_[letter] = live.weight * shares[letter] * seen_[letter];
        for (std::size_t letter = 0; letter < seen_.size(); ++letter)
            if (onward_[letter] > least)
                add(next[letter], onward_[letter]);
        add(live.state, live.weight * cell.stray);
    }
}

void ChainRow::takeStretch(const CellWeights& stretch)
{
    add(LetterChain::anywhere, sum() * lasts(stretch));
}

void ChainRow::takeCell(const AlignedCell& cell, double entry)
{
    if (cell.weights->stretch) {
        takeStretch(*cell.weights);
        for (const Live& live : row_)
            add(live.state, live.weight * cell.stray);
    } else {
        takeLetter(cell);
    }
    if (entry > 0)
        add(LetterChain::at_start, entry * entered_);
    gather();
    skipLetters();
    rescale();
}

void ChainRow::rescale()
{
    const double all = sum();
    if (all <= 0 || (all > 1e-60 && all < 1e60))
        return;
    for (Live& live : row_)
        live.weight /= all;
    total_ /= all;
    entered_ /= all;
    log_scale_ += std::log(all);
}

double ChainRow::logSum(const std::vector<AlignedCell>& cells, const AlignmentPlan& plan)
{
    begin(plan.entry[0], plan.cut_left);
    for (std::size_t i = 0; i < cells.size(); ++i) {
        leave(plan.exit[i], 0);
        takeCell(cells[i], plan.entry[i + 1]);
    }
    leave(plan.exit[cells.size()], plan.cut_right);
    return std::log(total_) + log_scale_;
}

std::vector<double> ChainRow::comingLetters() const
{
    std::vector<double> letters(seen_.size(), 0);
    double all = 0;
    for (const Live& live : row_) {
        const float* shares = chain_.shares(live.state);
        for (std::size_t letter = 0; letter < letters.size(); ++letter) {
            letters[letter] += live.weight * shares[letter];
            all += live.weight * shares[letter];
        }
    }
    if (all > 0)
        for (double& letter : letters)
            letter /= all;
    return letters;
}

std::vector<std::vector<double>> ChainRow::lettersOf(const std::vector<AlignedCell>& cells,
                                                     const AlignmentPlan& plan)
{
    std::vector<std::vector<double>> letters(cells.size());
    begin(plan.entry[0], plan.cut_left);
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (cells[i].weights->unread && !cells[i].weights->stretch)
            letters[i] = comingLetters();
        takeCell(cells[i], plan.entry[i + 1]);
    }
    return letters;
}

}  // namespace models
