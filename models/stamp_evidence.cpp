#include "models/stamp_evidence.h"

#include <algorithm>

namespace models {

namespace {

// A stamp on an item that shows no maker's mark: inspector, size, owner. Common practice, no
// source.
constexpr double no_mark_share = 0.15;
constexpr double over_two_lines = 0.08;  // of the marks, where there are two lines or more
constexpr std::size_t most_lines = 12;   // beyond these a stamp's lines are left out

// Factors of all lines but those from first to end.
std::vector<double> productWithout(const std::vector<LineEvidence>& lines, std::size_t first,
                                   std::size_t end, std::size_t years)
{
    std::vector<double> product(years, 1);
    for (std::size_t l = 0; l < lines.size(); ++l) {
        if (l >= first && l < end)
            continue;
        for (std::size_t y = 0; y < years; ++y)
            product[y] *= lines[l].withoutMark()[y];
    }
    return product;
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

StampEvidence::StampEvidence(const Reading& reading, const CompiledRegister& known)
{
    std::vector<const Line*> lines;
    for (const Line& line : reading.lines)
        if (!line.cells.empty() && lines.size() < most_lines)
            lines.push_back(&line);
    for (const Line* line : lines)
        lines_.emplace_back(*line, known);
    for (std::size_t l = 0; l + 1 < lines.size(); ++l)
        pairs_.emplace_back(joined(*lines[l], *lines[l + 1]), known, LineEvidence::Dates::Ignored);
    const std::size_t years = known.range.size();
    without_mark_ = productWithout(lines_, 0, 0, years);
    for (std::size_t l = 0; l < lines_.size(); ++l)
        beside_line_.push_back(productWithout(lines_, l, l + 1, years));
    for (std::size_t l = 0; l < pairs_.size(); ++l)
        beside_pair_.push_back(productWithout(lines_, l, l + 2, years));
}

double StampEvidence::lineShare() const
{
    const double single = pairs_.empty() ? 1 : 1 - over_two_lines;
    return (1 - no_mark_share) * single / static_cast<double>(lines_.size());
}

double StampEvidence::pairShare() const
{
    return (1 - no_mark_share) * over_two_lines / static_cast<double>(pairs_.size());
}

std::vector<double> StampEvidence::placed(const std::vector<std::vector<double>>& in_line,
                                          const std::vector<double>& in_pair) const
{
    std::vector<double> odds = without_mark_;
    if (lines_.empty())
        return odds;
    for (double& odd : odds)
        odd *= no_mark_share;
    for (std::size_t l = 0; l < lines_.size(); ++l)
        for (std::size_t y = 0; y < odds.size(); ++y)
            odds[y] += lineShare() * in_line[l][y] * beside_line_[l][y];
    for (std::size_t l = 0; l < pairs_.size(); ++l)
        for (std::size_t y = 0; y < odds.size(); ++y)
            odds[y] += pairShare() * in_pair[l] * beside_pair_[l][y];
    return odds;
}

std::vector<double> StampEvidence::withMark(std::size_t mark) const
{
    std::vector<std::vector<double>> in_line;
    std::vector<double> in_pair;
    for (const LineEvidence& line : lines_)
        in_line.push_back(line.withMark(mark));
    for (const LineEvidence& pair : pairs_)
        in_pair.push_back(pair.wholeMarkOdds(mark));
    return placed(in_line, in_pair);
}

std::vector<double> StampEvidence::withUnknownMark() const
{
    std::vector<std::vector<double>> in_line;
    for (const LineEvidence& line : lines_)
        in_line.push_back(line.withUnknownMark());
    std::vector<double> in_pair;
    for (const LineEvidence& pair : pairs_)
        in_pair.push_back(pair.wholeUnknownOdds());
    return placed(in_line, in_pair);
}

std::vector<double> StampEvidence::dateOdds() const
{
    std::vector<double> odds(without_mark_.size(), 1);
    for (const LineEvidence& line : lines_) {
        const std::vector<double> of_line = line.dateOdds();
        for (std::size_t y = 0; y < odds.size(); ++y)
            odds[y] *= of_line[y];
    }
    return odds;
}

MarkPlace StampEvidence::bestPlace(std::size_t mark) const
{
    MarkPlace best;
    for (std::size_t l = 0; l < lines_.size(); ++l)
        if (const double odds = lines_[l].bestMarkOdds(mark); odds > best.odds)
            best = {l, l + 1, odds};
    for (std::size_t l = 0; l < pairs_.size(); ++l) {
        const double odds = pairs_[l].wholeMarkOdds(mark) * over_two_lines;
        if (odds > best.odds)
            best = {l, l + 2, odds};
    }
    return best;
}

}  // namespace models
