#include "models/line_evidence.h"

#include <algorithm>
#include <cmath>

#include "models/coded_dates.h"
#include "models/date_forms.h"
#include "models/printed_years.h"

namespace models {

namespace {

// Shares of what a line without a mark holds. Common practice, no source.
constexpr double line_is_date = 0.35, line_is_known_text = 0.15, line_is_wordy = 0.03;
constexpr double mark_line_has_date = 0.2;
// A mark fills its line, or other text stands before or behind it.
constexpr double fills_its_end = 0.8;
// The same of a date, in parts of other text of the same length (one length in ten).
constexpr double length_share = 0.1;
constexpr double date_alone = 0.5 / length_share, date_at_an_end = 0.2, date_within = 0.05;
// That a line's end is gone, by what is known of it.
constexpr double cut_when_unknown = 0.03, cut_when_seen = 0.8;
constexpr std::size_t most_dates = 6;
constexpr double insert_rate = 0.02;  // as MatchOptions has it

double cutShare(LineEnd end)
{
    if (end == LineEnd::Complete)
        return 0;
    return end == LineEnd::CutOff ? cut_when_seen : cut_when_unknown;
}

// P(cells | this text among them) / P(cells | other text).
double textOdds(const std::vector<AlignedCell>& cells, const MatchText& text,
                const AlignmentPlan& plan)
{
    static const GapRates rates(insert_rate);
    return std::exp(logAlignmentSum(cells, text, plan, rates)) / length_share;
}

// What stands beside a date is known text or any.
double textBeside(double known_odds)
{
    return 1 - line_is_known_text + line_is_known_text * known_odds;
}

double placeShare(std::size_t first_cell, std::size_t end_cell, std::size_t cells)
{
    const bool at_start = first_cell == 0, at_end = end_cell == cells;
    if (at_start && at_end)
        return date_alone;
    return at_start || at_end ? date_at_an_end : date_within;
}

}  // namespace

LineEvidence::LineEvidence(const Line& line, const CompiledRegister& known, Dates dates)
    : known_(known), weights_(weighCells(line.cells, known.ids, ConfusionTable::published()))
{
    cells_ = cellsAsOdds(weights_, GapRates(insert_rate));
    if (dates == Dates::Looked)
        findPlaces(line);
    whole_ = weighStretch(line, 0, cells_.size());
    for (const DatePlace& date : dates_) {
        left_.push_back(weighStretch(line, 0, date.first_cell));
        right_.push_back(weighStretch(line, date.end_cell, cells_.size()));
    }
    const double rest = 1 - line_is_date - line_is_known_text - line_is_wordy;
    const double undated =
        rest + line_is_wordy * whole_.unknown_odds + line_is_known_text * whole_.text_odds;
    without_mark_.assign(known.range.size(), undated);
    for (std::size_t d = 0; d < dates_.size(); ++d) {
        const DatePlace& date = dates_[d];
        const double share = line_is_date * textBeside(left_[d].text_odds) *
                             textBeside(right_[d].text_odds) *
                             placeShare(date.first_cell, date.end_cell, cells_.size());
        for (std::size_t y = 0; y < without_mark_.size(); ++y)
            without_mark_[y] += share * date.odds[y];
    }
}

DatePlace& LineEvidence::placeOf(std::size_t first_cell, std::size_t end_cell)
{
    const auto same = std::find_if(dates_.begin(), dates_.end(), [&](const DatePlace& place) {
        return place.first_cell == first_cell && place.end_cell == end_cell;
    });
    if (same != dates_.end())
        return *same;
    dates_.push_back({first_cell, end_cell, std::vector<double>(known_.range.size(), 0)});
    return dates_.back();
}

void LineEvidence::addFigures(const Line& line)
{
    for (const DateInstance& instance : findDates(line)) {
        DatePlace& place = placeOf(instance.first_cell, instance.end_cell);
        for (std::size_t y = 0; y < place.odds.size(); ++y)
            place.odds[y] += instance.odds(known_.range.first + static_cast<int>(y));
    }
}

void LineEvidence::addYearCodes(const Line& line)
{
    for (const CodeWord& word : codeWords(line, cells_))
        for (const CompiledYearCode& code : known_.year_codes) {
            const double odds = codeOdds(word, code.text);
            if (odds <= 0)
                continue;
            DatePlace& place = placeOf(word.first_cell, word.end_cell);
            for (std::size_t y = 0; y < place.odds.size(); ++y)
                place.odds[y] += odds * code.years[y];
        }
}

void LineEvidence::findPlaces(const Line& line)
{
    addFigures(line);
    addYearCodes(line);
    const auto best = [](const DatePlace& place) {
        return *std::max_element(place.odds.begin(), place.odds.end());
    };
    std::sort(dates_.begin(), dates_.end(),
              [&](const DatePlace& a, const DatePlace& b) { return best(a) > best(b); });
    if (dates_.size() > most_dates)
        dates_.resize(most_dates);
    while (!dates_.empty() && best(dates_.back()) < 0.01 * best(dates_.front()))
        dates_.pop_back();
    const PrintedYears printed(line, known_.range);
    for (DatePlace& place : dates_)
        place.odds = printed.asMade(place.odds, place.end_cell);
}

LineEvidence::Stretch LineEvidence::weighStretch(const Line& line, std::size_t first_cell,
                                                 std::size_t end_cell) const
{
    Stretch stretch;
    stretch.first_cell = first_cell;
    stretch.end_cell = end_cell;
    stretch.mark_odds.assign(known_.marks.size(), 0);
    if (first_cell >= end_cell)
        return stretch;
    const AlignmentPlan plan = planFor(line, first_cell, end_cell);
    const std::vector<AlignedCell> cells(cells_.begin() + static_cast<long>(first_cell),
                                         cells_.begin() + static_cast<long>(end_cell));
    for (std::size_t i = 0; i < known_.marks.size(); ++i)
        for (const CompiledSpelling& spelling : known_.marks[i].spellings)
            stretch.mark_odds[i] += spelling.share * textOdds(cells, spelling.text, plan);
    stretch.text_odds = otherTextsOdds(cells, plan);
    double length_odds = 0;
    for (const CompiledSpelling& length : known_.lengths)
        length_odds += length.share * textOdds(cells, length.text, plan);
    stretch.unknown_odds = known_.letter_model.odds(weights_, first_cell, end_cell) * length_odds;
    return stretch;
}

AlignmentPlan LineEvidence::planFor(const Line& line, std::size_t first_cell,
                                    std::size_t end_cell) const
{
    const std::size_t n = end_cell - first_cell;
    AlignmentPlan plan;
    const double within = (1 - fills_its_end) / static_cast<double>(n + 1);
    plan.entry.assign(n + 1, within);
    plan.exit.assign(n + 1, within);
    plan.entry.front() += fills_its_end;
    plan.exit.back() += fills_its_end;
    plan.cut_left = first_cell == 0 ? cutShare(line.left_end) : 0;
    plan.cut_right = end_cell == cells_.size() ? cutShare(line.right_end) : 0;
    return plan;
}

double LineEvidence::otherTextsOdds(const std::vector<AlignedCell>& cells,
                                    const AlignmentPlan& plan) const
{
    if (known_.other_texts.empty())
        return 1;
    double sum = 0;
    for (const MatchText& text : known_.other_texts)
        sum += textOdds(cells, text, plan);
    return sum / static_cast<double>(known_.other_texts.size());
}

// A mark in the whole line, or in what a date leaves on its left or right.
std::vector<double> LineEvidence::besideDates(double whole, const std::vector<double>& left,
                                              const std::vector<double>& right) const
{
    std::vector<double> odds(known_.range.size(), (1 - mark_line_has_date) * whole);
    for (std::size_t d = 0; d < dates_.size(); ++d) {
        const double beside = mark_line_has_date * 0.5 * (left[d] + right[d]);
        if (beside <= 0)
            continue;
        for (std::size_t y = 0; y < odds.size(); ++y)
            odds[y] += beside * dates_[d].odds[y];
    }
    return odds;
}

std::vector<double> LineEvidence::dateOdds() const
{
    std::vector<double> odds(known_.range.size(), 1 - line_is_date);
    for (const DatePlace& date : dates_)
        for (std::size_t y = 0; y < odds.size(); ++y)
            odds[y] += line_is_date * placeShare(date.first_cell, date.end_cell, cells_.size()) *
                       date.odds[y];
    return odds;
}

std::vector<double> LineEvidence::withMark(std::size_t mark) const
{
    std::vector<double> left, right;
    for (std::size_t d = 0; d < dates_.size(); ++d) {
        left.push_back(left_[d].mark_odds[mark]);
        right.push_back(right_[d].mark_odds[mark]);
    }
    return besideDates(whole_.mark_odds[mark], left, right);
}

std::vector<double> LineEvidence::withUnknownMark() const
{
    std::vector<double> left, right;
    for (std::size_t d = 0; d < dates_.size(); ++d) {
        left.push_back(left_[d].unknown_odds);
        right.push_back(right_[d].unknown_odds);
    }
    return besideDates(whole_.unknown_odds, left, right);
}

double LineEvidence::bestMarkOdds(std::size_t mark) const
{
    double best = whole_.mark_odds[mark];
    for (std::size_t d = 0; d < dates_.size(); ++d)
        best = std::max({best, left_[d].mark_odds[mark], right_[d].mark_odds[mark]});
    return best;
}

}  // namespace models
