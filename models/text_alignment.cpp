#include "models/text_alignment.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "models/letters.h"

namespace models {

namespace {

// Dots and spaces come and go this many times as easily as letters.
constexpr int blank_skip_power = 15, blank_insert_power = 3;

bool isBlank(const std::string& letter)
{
    return letter == " " || letter == "." || letter == ",";
}

// A row of the forward table for the letters 0 to n, kept in range by a common factor.
class ForwardRow {
public:
    ForwardRow(const MatchText& text, const GapRates& rates)
        : text_(text), rates_(rates), row_(text.letters.size() + 1, 0), last_(row_.size(), 0)
    {
    }

    void begin(double weight, double cut);
    void takeCell(const AlignedCell& cell, double entry);
    void leave(double weight, double cut);
    double logTotal() const { return std::log(total_) + log_scale_; }

private:
    void takeStretch(const AlignedCell& cell);
    void takeLetter(const AlignedCell& cell);
    void skipLetters();
    void rescale();

    const MatchText& text_;
    const GapRates& rates_;
    std::vector<double> row_, last_;
    double total_ = 0, log_scale_ = 0;
    double entered_ = 1;  // what a weight of 1 is worth on the present scale
};

void ForwardRow::begin(double weight, double cut)
{
    row_[0] = weight * (1 - cut);
    double share = weight * cut * (1 - going_on);
    for (std::size_t j = 1; j < row_.size() && share > 0; ++j, share *= going_on)
        row_[j] = share;
    skipLetters();
}

void ForwardRow::leave(double weight, double cut)
{
    if (weight <= 0)
        return;
    const std::size_t n = row_.size() - 1;
    double sum = row_[n] * (1 - cut) * rates_.none;
    double share = cut * (1 - going_on);
    for (std::size_t j = n; j > 0 && share > 0; --j, share *= going_on)
        sum += row_[j - 1] * share * rates_.none;
    total_ += weight * sum;
}

// `entry` is the weight of the text's beginning right behind this cell.
void ForwardRow::takeCell(const AlignedCell& cell, double entry)
{
    std::swap(row_, last_);
    if (cell.weights->stretch)
        takeStretch(cell);
    else
        takeLetter(cell);
    if (entry > 0)
        row_[0] += entry * entered_;
    skipLetters();
    rescale();
}

void ForwardRow::takeLetter(const AlignedCell& cell)
{
    row_[0] = last_[0] * cell.stray;
    for (std::size_t j = 1; j < row_.size(); ++j)
        row_[j] = last_[j] * cell.stray + last_[j - 1] * matchWeight(cell, text_, j - 1, rates_);
}

void ForwardRow::takeStretch(const AlignedCell& cell)
{
    const auto least = static_cast<std::size_t>(cell.weights->least);
    const auto& most = cell.weights->most;
    const double share = most ? 1.0 / (*most - cell.weights->least + 1) : 1 - going_on;
    double running = 0;  // the sum over the letters that the stretch may have begun behind
    for (std::size_t j = 0; j < row_.size(); ++j) {
        if (!most)
            running *= going_on;
        if (j >= least)
            running += last_[j - least];
        if (most && j > static_cast<std::size_t>(*most))
            running -= last_[j - static_cast<std::size_t>(*most) - 1];
        row_[j] = std::max(running, 0.0) * share + last_[j] * cell.stray;
    }
}

void ForwardRow::skipLetters()
{
    for (std::size_t j = 1; j < row_.size(); ++j)
        row_[j] += row_[j - 1] * rates_.none * text_.skip[j - 1];
}

void ForwardRow::rescale()
{
    const double largest = *std::max_element(row_.begin(), row_.end());
    if (largest <= 0 || (largest > 1e-60 && largest < 1e60))
        return;
    for (double& value : row_)
        value /= largest;
    total_ /= largest;
    entered_ /= largest;
    log_scale_ += std::log(largest);
}

}  // namespace

GapRates::GapRates(double insert_rate)
{
    const double blank = 1 - std::pow(1 - insert_rate, blank_insert_power);
    dot = blank;
    space = blank * (1 - blank);
    letter = insert_rate * (1 - blank) * (1 - blank);
    none = (1 - insert_rate) * (1 - blank) * (1 - blank);
}

double strayWeight(const CellWeights& cell, const GapRates& rates)
{
    if (cell.unread)  // of a character that nobody could read: a blank would not be missed
        return rates.letter;
    return rates.letter * cell.other + rates.dot * cell.dot + rates.space * cell.space;
}

double blankSkip(double skip_rate)
{
    return 1 - std::pow(1 - skip_rate, blank_skip_power);
}

MatchText makeMatchText(const std::string& text, LetterIds& ids, double skip_rate)
{
    MatchText made;
    made.letters = ids.idsOf(text);
    const double blank = blankSkip(skip_rate);
    for (const std::size_t id : made.letters)
        made.skip.push_back(isBlank(ids.letter(id)) ? blank : skip_rate);
    return made;
}

double matchWeight(const AlignedCell& cell, const MatchText& text, std::size_t letter,
                   const GapRates& rates)
{
    const double seen = cell.weights->unread ? 1 : cell.weights->of_letter[text.letters[letter]];
    return rates.none * (1 - text.skip[letter]) * seen / cell.divisor;
}

double cutLengthShare(std::size_t letters)
{
    return (1 - going_on) * std::pow(going_on, static_cast<double>(letters) - 1);
}

double stretchLengthShare(const CellWeights& stretch, std::size_t letters)
{
    const int count = static_cast<int>(letters);
    if (count < stretch.least || (stretch.most && count > *stretch.most))
        return 0;
    return stretch.most ? 1.0 / (*stretch.most - stretch.least + 1)
                        : (1 - going_on) * std::pow(going_on, count - stretch.least);
}

std::vector<AlignedCell> cellsAsOdds(const std::vector<CellWeights>& weights, const GapRates& rates)
{
    std::vector<AlignedCell> cells;
    cells.reserve(weights.size());
    for (const CellWeights& cell : weights)
        cells.push_back({&cell, cell.other, strayWeight(cell, rates) / cell.other});
    return cells;
}

double logAlignmentSum(const std::vector<AlignedCell>& cells, const MatchText& text,
                       const AlignmentPlan& plan, const GapRates& rates)
{
    ForwardRow row(text, rates);
    row.begin(plan.entry[0], plan.cut_left);
    for (std::size_t i = 0; i < cells.size(); ++i) {
        row.leave(plan.exit[i], 0);
        row.takeCell(cells[i], plan.entry[i + 1]);
    }
    row.leave(plan.exit[cells.size()], plan.cut_right);
    return row.logTotal();
}

}  // namespace models
