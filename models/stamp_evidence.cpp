#include "models/stamp_evidence.h"

#include <algorithm>

#include "models/year_product.h"

namespace models {

namespace {

// A stamp on an item that shows no maker's mark: inspector, size, owner. Common practice, no
// source.
constexpr double no_mark_share = 0.15;
constexpr double over_two_lines = 0.08;  // of the marks, where there are two lines or more
constexpr std::size_t most_lines = 60;   // beyond these a stamp's lines are left out

bool tellsYearsApart(const std::vector<double>& date_odds)
{
    constexpr double more = 3;
    const auto [least, most] = std::minmax_element(date_odds.begin(), date_odds.end());
    return *most > more * *least;
}

// Factors of all lines but those from first to end, times a share; every line's odds are divided by
// its scale, those left out too.
std::vector<double> productWithout(const std::vector<LineEvidence>& lines, std::size_t first,
                                   std::size_t end, std::size_t years, double share = 1)
{
    std::vector<double> product(years, share);
    for (std::size_t l = 0; l < lines.size(); ++l) {
        const bool left_out = l >= first && l < end;
        for (std::size_t y = 0; y < years; ++y)
            product[y] *= (left_out ? 1 : lines[l].withoutMark()[y]) / lines[l].scale();
    }
    return product;
}

}  // namespace

StampEvidence::StampEvidence(const Reading& reading, const CompiledRegister& known,
                             const LeftOut& left_out)
    : letter_count_(known.ids.size())
{
    std::vector<const Line*> lines;
    for (const Line& line : reading.lines)
        if (!line.cells.empty() && lines.size() < most_lines)
            lines.push_back(&line);
    for (const Line* line : lines)
        lines_.emplace_back(*line, known);
    for (std::size_t l = 0; l + 1 < lines.size(); ++l)
        pairs_.emplace_back(*lines[l], *lines[l + 1], known);
    const std::size_t years = known.range.size();
    without_mark_ = productWithout(lines_, 0, 0, years);
    for (std::size_t l = 0; l < lines_.size(); ++l)
        beside_line_.push_back(productWithout(lines_, l, l + 1, years, lineShare()));
    for (std::size_t l = 0; l < pairs_.size(); ++l)
        beside_pair_.push_back(productWithout(lines_, l, l + 2, years, pairShare()));
    with_other_mark_ = without_mark_;
    if (!lines_.empty())
        for (double& odds : with_other_mark_)
            odds *= no_mark_share;
    findMarks(known, left_out);
    collectMarks();
}

// Where a mark is likeliest first: what was found there tells what can be left elsewhere.
void StampEvidence::findMarks(const CompiledRegister& known, const LeftOut& left_out)
{
    struct Search {
        LineEvidence* line;
        std::size_t stretch;
        double level;  // how much odds there count for in the stamp
        const std::vector<double>* worth;
    };
    std::vector<Search> searches;
    const std::vector<double> worth = worthByDates(known);
    // A line that is the mark holds no date: what it would say as one must not tell against makers.
    const auto add = [&](LineEvidence& line, const std::vector<double>& beside, bool is_dated) {
        const double level = *std::max_element(beside.begin(), beside.end());
        for (std::size_t s = 0; s < line.stretchCount(); ++s)
            searches.push_back(
                {&line, s, level * line.stretchLevel(s), is_dated ? nullptr : &worth});
    };
    std::vector<bool> dated;
    for (const LineEvidence& line : lines_)
        dated.push_back(tellsYearsApart(line.dateOdds()));
    for (std::size_t l = 0; l < lines_.size(); ++l)
        add(lines_[l], beside_line_[l], dated[l]);
    for (std::size_t l = 0; l < pairs_.size(); ++l)
        add(pairs_[l], beside_pair_[l], dated[l] || dated[l + 1]);
    const auto unknown = [](const Search& search) {
        return search.level * search.line->unknownOdds(search.stretch);
    };
    std::stable_sort(searches.begin(), searches.end(),
                     [&](const Search& a, const Search& b) { return unknown(a) > unknown(b); });
    double matters =
        left_out.of_no_mark * *std::max_element(with_other_mark_.begin(), with_other_mark_.end());
    if (!searches.empty())
        matters = std::max(matters, left_out.of_unknown * unknown(searches.front()));
    double best = 0;
    for (const Search& search : searches) {
        const MarkLimits limits{matters / search.level, left_out.of_best, best / search.level,
                                search.worth};
        best = std::max(best, search.level * search.line->findMarks(search.stretch, limits));
    }
}

// How well the stamp's dates suit each mark's maker, by number of the register's spellings; the
// best suited have 1.
std::vector<double> StampEvidence::worthByDates(const CompiledRegister& known) const
{
    YearProduct dates(std::vector<double>(known.range.size(), 1));
    for (const LineEvidence& line : lines_)
        dates.multiply(line.dateOdds());
    std::vector<double> fits;
    fits.reserve(known.year_shares.size());
    for (const std::vector<double>& years : known.year_shares)
        fits.push_back(productSum(years, dates.values()));
    const double best = fits.empty() ? 1 : *std::max_element(fits.begin(), fits.end());
    std::vector<double> worth;
    worth.reserve(known.spellings.size());
    for (const CompiledSpelling& spelling : known.spellings)
        worth.push_back(fits[spelling.years] / best);
    return worth;
}

void StampEvidence::collectMarks()
{
    for (const std::vector<LineEvidence>* lines : {&lines_, &pairs_})
        for (const LineEvidence& line : *lines) {
            const std::vector<std::uint32_t> marks = line.marks();
            marks_.insert(marks_.end(), marks.begin(), marks.end());
        }
    std::sort(marks_.begin(), marks_.end());
    marks_.erase(std::unique(marks_.begin(), marks_.end()), marks_.end());
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

std::vector<double> StampEvidence::withMark(std::size_t mark) const
{
    std::vector<double> odds = with_other_mark_;
    for (std::size_t l = 0; l < lines_.size(); ++l)
        lines_[l].addMark(mark, beside_line_[l], odds);
    for (std::size_t l = 0; l < pairs_.size(); ++l)
        if (const double in_pair = pairs_[l].wholeMarkOdds(mark); in_pair > 0)
            for (std::size_t y = 0; y < odds.size(); ++y)
                odds[y] += in_pair * beside_pair_[l][y];
    return odds;
}

std::vector<double> StampEvidence::withUnknownMark() const
{
    std::vector<double> odds = with_other_mark_;
    for (std::size_t l = 0; l < lines_.size(); ++l) {
        const std::vector<double> in_line = lines_[l].withUnknownMark();
        for (std::size_t y = 0; y < odds.size(); ++y)
            odds[y] += in_line[y] * beside_line_[l][y];
    }
    for (std::size_t l = 0; l < pairs_.size(); ++l)
        for (std::size_t y = 0; y < odds.size(); ++y)
            odds[y] += pairs_[l].wholeUnknownOdds() * beside_pair_[l][y];
    return odds;
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
