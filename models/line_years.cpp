// The years that a line names: the part of LineEvidence that looks for dates.
#include <algorithm>
#include <cmath>

#include "models/coded_dates.h"
#include "models/date_forms.h"
#include "models/line_evidence.h"
#include "models/line_shares.h"
#include "models/printed_years.h"

namespace models {

namespace {

constexpr std::size_t most_dates = 6;
constexpr double least_date_odds = 0.05;  // less changes nothing
constexpr double plainly = 20;            // times as likely as any other year

// The year that four figures say at face value; nullopt where one of them was not read.
std::optional<int> yearInFigures(const DateInstance& date)
{
    constexpr std::size_t figures = 4;
    if (date.year_digits != figures)
        return std::nullopt;
    int year = 0;
    for (std::size_t i = date.year_glyph; i < date.year_glyph + figures; ++i) {
        const DateGlyph& glyph = date.glyphs[i];
        if (glyph.unread)
            return std::nullopt;
        const auto best = std::max_element(glyph.digit_odds.begin(), glyph.digit_odds.end());
        year = 10 * year + static_cast<int>(best - glyph.digit_odds.begin());
    }
    return year;
}

}  // namespace

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
    double best = 0, best_beyond = 0;
    for (const DateInstance& instance : findDates(line)) {
        DatePlace& place = placeOf(instance.first_cell, instance.end_cell);
        for (std::size_t y = 0; y < place.odds.size(); ++y) {
            const double odds = instance.odds(known_.range.first + static_cast<int>(y));
            place.odds[y] += odds;
            best = std::max(best, odds);
        }
        const auto year = yearInFigures(instance);
        if (!year || (*year >= known_.range.first && *year <= known_.range.last))
            continue;
        if (const double odds = instance.odds(*year); odds > best_beyond) {
            best_beyond = odds;
            year_beyond_ = year;
        }
    }
    if (best_beyond < plainly * best)
        year_beyond_.reset();
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
    while (!dates_.empty() &&
           best(dates_.back()) < std::max(least_date_odds, 0.01 * best(dates_.front())))
        dates_.pop_back();
    const PrintedYears printed(line, known_.range);
    for (DatePlace& place : dates_)
        place.odds = printed.asMade(place.odds, place.end_cell);
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

std::optional<int> LineEvidence::plainYear() const
{
    const std::vector<double> odds = dateOdds();
    const auto best = std::max_element(odds.begin(), odds.end());
    for (auto other = odds.begin(); other != odds.end(); ++other)
        if (other != best && *best < plainly * *other)
            return std::nullopt;
    return best == odds.end()
               ? std::nullopt
               : std::optional(known_.range.first + static_cast<int>(best - odds.begin()));
}

}  // namespace models
