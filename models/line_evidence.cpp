#include "models/line_evidence.h"

#include <algorithm>
#include <cmath>

#include "models/line_shares.h"
#include "models/trie_search.h"

namespace models {

namespace {

// A mark fills its line, or other text stands before or behind it.
constexpr double fills_its_end = 0.8;
// That a line's end is gone, by what is known of it.
constexpr double cut_when_unknown = 0.03, cut_when_seen = 0.8;
constexpr double most_log_odds = 300;     // of text longer than any mark: two lines' fit a double
constexpr double least_text_odds = 0.01;  // less changes nothing

double cutShare(LineEnd end)
{
    if (end == LineEnd::Complete)
        return 0;
    return end == LineEnd::CutOff ? cut_when_seen : cut_when_unknown;
}

// What stands beside a date is known text or any.
double textBeside(double known_odds)
{
    return 1 - line_is_known_text + line_is_known_text * known_odds;
}

Line joined(const Line& first, const Line& second)
{
    Line line = first;
    Cell between;  // a space, or nothing where a word runs on
    between.state = CellState::Lost;
    between.least = 0;
    line.cells.push_back(between);
    line.cells.insert(line.cells.end(), second.cells.begin(), second.cells.end());
    line.right_end = second.right_end;
    return line;
}

}  // namespace

LineEvidence::LineEvidence(const Line& first, const Line& second, const CompiledRegister& known)
    : known_(known),
      left_end_(first.left_end),
      right_end_(second.right_end),
      weights_(weighCells(joined(first, second).cells, known.ids, known.errors)),
      cells_(cellsAsOdds(weights_, known.rates)),
      break_(first.cells.size())
{
    stretchOf(0, cells_.size(), 1);
}

LineEvidence::LineEvidence(const Line& line, const CompiledRegister& known)
    : known_(known),
      left_end_(line.left_end),
      right_end_(line.right_end),
      weights_(weighCells(line.cells, known.ids, known.errors)),
      cells_(cellsAsOdds(weights_, known.rates))
{
    findPlaces(line);
    stretchOf(0, cells_.size(), 1 - mark_line_has_date);
    for (const DatePlace& date : dates_) {
        const double level =
            0.5 * mark_line_has_date * *std::max_element(date.odds.begin(), date.odds.end());
        left_.push_back(stretchOf(0, date.first_cell, level));
        right_.push_back(stretchOf(date.end_cell, cells_.size(), level));
    }
    weighWithoutMark();
}

void LineEvidence::weighWithoutMark()
{
    const double rest = 1 - line_is_date - line_is_known_text - line_is_wordy;
    const double undated =
        rest + line_is_wordy * whole().unknown_odds + line_is_known_text * whole().text_odds;
    without_mark_.assign(known_.range.size(), undated);
    for (std::size_t d = 0; d < dates_.size(); ++d) {
        const DatePlace& date = dates_[d];
        const double share = line_is_date * textBeside(stretches_[left_[d]].text_odds) *
                             textBeside(stretches_[right_[d]].text_odds) *
                             placeShare(date.first_cell, date.end_cell, cells_.size());
        for (std::size_t y = 0; y < without_mark_.size(); ++y)
            without_mark_[y] += share * date.odds[y];
    }
}

double LineEvidence::Stretch::of(std::size_t mark) const
{
    const auto found =
        std::lower_bound(mark_odds.begin(), mark_odds.end(), mark,
                         [](const MarkOdds& odds, std::size_t m) { return odds.mark < m; });
    return found != mark_odds.end() && found->mark == mark ? found->odds : 0;
}

std::size_t LineEvidence::stretchOf(std::size_t first_cell, std::size_t end_cell, double level)
{
    auto stretch = std::find_if(stretches_.begin(), stretches_.end(), [&](const Stretch& other) {
        return other.first_cell == first_cell && other.end_cell == end_cell;
    });
    if (stretch == stretches_.end()) {
        stretches_.push_back({first_cell,
                              end_cell,
                              0,
                              unknownOdds(first_cell, end_cell),
                              otherTextsOdds(first_cell, end_cell),
                              {}});
        stretch = stretches_.end() - 1;
    }
    stretch->level += level;
    return static_cast<std::size_t>(stretch - stretches_.begin());
}

double LineEvidence::unknownOdds(std::size_t first_cell, std::size_t end_cell) const
{
    const std::vector<AlignedCell> cells = cellsOf(first_cell, end_cell);
    if (lettersRead(cells) == 0)
        return 0;
    const double log_sum =
        known_.letter_model.logSum(cells, planFor(first_cell, end_cell), known_.rates);
    return std::exp(std::min(log_sum, most_log_odds)) / length_share;
}

std::vector<AlignedCell> LineEvidence::cellsOf(std::size_t first_cell, std::size_t end_cell) const
{
    return {cells_.begin() + static_cast<long>(first_cell),
            cells_.begin() + static_cast<long>(end_cell)};
}

double LineEvidence::findMarks(std::size_t stretch, const MarkLimits& limits)
{
    Stretch& where = stretches_[stretch];
    if (where.first_cell >= where.end_cell)
        return 0;
    where.mark_odds = models::findMarks(known_, cellsOf(where.first_cell, where.end_cell),
                                        planFor(where.first_cell, where.end_cell), limits);
    double best = 0;
    for (const MarkOdds& odds : where.mark_odds)
        best = std::max(best, odds.odds * known_.marks[odds.mark].worthIn(limits.worth));
    return best;
}

AlignmentPlan LineEvidence::planFor(std::size_t first_cell, std::size_t end_cell) const
{
    const std::size_t n = end_cell - first_cell;
    // Where a text begins and ends; one over two lines takes a cell of either at least.
    const std::size_t last_entry = break_ ? *break_ - 1 : n, first_exit = break_ ? *break_ + 2 : 0;
    AlignmentPlan plan;
    plan.entry.assign(n + 1, 0);
    plan.exit.assign(n + 1, 0);
    for (std::size_t i = 0; i <= last_entry; ++i)
        plan.entry[i] = (1 - fills_its_end) / static_cast<double>(last_entry + 1);
    for (std::size_t i = first_exit; i <= n; ++i)
        plan.exit[i] = (1 - fills_its_end) / static_cast<double>(n + 1 - first_exit);
    plan.entry.front() += fills_its_end;
    plan.exit.back() += fills_its_end;
    // A mark over two lines that is cut too where nobody saw it is left out.
    const auto cut = [&](LineEnd end) {
        return break_ && end != LineEnd::CutOff ? 0 : cutShare(end);
    };
    plan.cut_left = first_cell == 0 ? cut(left_end_) : 0;
    plan.cut_right = end_cell == cells_.size() ? cut(right_end_) : 0;
    return plan;
}

double LineEvidence::otherTextsOdds(std::size_t first_cell, std::size_t end_cell) const
{
    if (first_cell >= end_cell)
        return 1;
    const std::vector<AlignedCell> cells = cellsOf(first_cell, end_cell);
    const AlignmentPlan plan = planFor(first_cell, end_cell);
    const auto mean = [&](const TextTrie& texts) {
        return meanOdds(texts, cells, plan, known_.rates, least_text_odds * length_share) /
               length_share;
    };
    if (known_.places.texts().empty())
        return known_.other_texts.texts().empty() ? 1 : mean(known_.other_texts);
    return (1 - known_text_is_place) * mean(known_.other_texts) +
           known_text_is_place * mean(known_.places);
}

double LineEvidence::besideDate(std::size_t date, std::size_t mark) const
{
    return mark_line_has_date * 0.5 *
           (stretches_[left_[date]].of(mark) + stretches_[right_[date]].of(mark));
}

std::vector<std::uint32_t> LineEvidence::marks() const
{
    std::vector<std::uint32_t> all;
    for (const Stretch& stretch : stretches_)
        for (const MarkOdds& odds : stretch.mark_odds)
            all.push_back(odds.mark);
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
}

// A mark in the whole line, or in what a date leaves on its left or right.
void LineEvidence::addMark(std::size_t mark, const std::vector<double>& factor,
                           std::vector<double>& sum) const
{
    const double in_whole = (1 - mark_line_has_date) * whole().of(mark);
    if (in_whole > 0)
        for (std::size_t y = 0; y < sum.size(); ++y)
            sum[y] += in_whole * factor[y];
    for (std::size_t d = 0; d < dates_.size(); ++d)
        if (const double beside = besideDate(d, mark); beside > 0)
            for (std::size_t y = 0; y < sum.size(); ++y)
                sum[y] += beside * dates_[d].odds[y] * factor[y];
}

std::vector<double> LineEvidence::withUnknownMark() const
{
    std::vector<double> odds(known_.range.size(), (1 - mark_line_has_date) * whole().unknown_odds);
    for (std::size_t d = 0; d < dates_.size(); ++d) {
        const double beside =
            mark_line_has_date * 0.5 *
            (stretches_[left_[d]].unknown_odds + stretches_[right_[d]].unknown_odds);
        for (std::size_t y = 0; y < odds.size(); ++y)
            odds[y] += beside * dates_[d].odds[y];
    }
    return odds;
}

double LineEvidence::bestMarkOdds(std::size_t mark) const
{
    double best = 0;
    for (const Stretch& stretch : stretches_)
        best = std::max(best, stretch.of(mark));
    return best;
}

}  // namespace models
