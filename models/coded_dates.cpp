#include "models/coded_dates.h"

#include <cmath>

#include "models/text_match.h"

namespace models {

namespace {

// Of the dates, those written as a code where the register lists one for the year. Common practice,
// no source.
constexpr double date_is_code = 0.1, least_code_odds = 0.5;

bool isSpace(const Cell& cell)
{
    return !cell.alternatives.empty() && cell.alternatives.front().text == " ";
}

}  // namespace

std::vector<CodeWord> codeWords(const Line& line, const std::vector<AlignedCell>& cells)
{
    std::vector<CodeWord> words;
    std::size_t first = 0;
    for (std::size_t i = 0; i <= line.cells.size(); ++i) {
        if (i < line.cells.size() && !isSpace(line.cells[i]))
            continue;
        if (i > first)
            words.push_back({first,
                             i,
                             {cells.begin() + static_cast<std::ptrdiff_t>(first),
                              cells.begin() + static_cast<std::ptrdiff_t>(i)}});
        first = i + 1;
    }
    return words;
}

double codeOdds(const CodeWord& word, const MatchText& code)
{
    static const GapRates rates(MatchOptions{}.insert_rate);
    AlignmentPlan plan;
    plan.entry.assign(word.cells.size() + 1, 0);
    plan.exit = plan.entry;
    plan.entry.front() = plan.exit.back() = 1;
    const double odds = date_is_code * std::exp(logAlignmentSum(word.cells, code, plan, rates));
    return odds < least_code_odds ? 0 : odds;
}

}  // namespace models
