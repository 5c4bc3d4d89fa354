#include "models/date_mark.h"

#include <algorithm>
#include <map>
#include <stdexcept>

#include "models/date_forms.h"
#include "models/date_writing.h"
#include "models/typed_notation.h"

namespace models {

namespace {

// Odds, before looking, that a date begins at a certain place of a line and not other text.
constexpr double date_prior_odds = 0.03;
constexpr double whole_line_odds = 0.2;  // and that a whole line is one
constexpr double least_probability = 0.02;
constexpr std::size_t most_meanings = 12;

struct Weighed {
    DateMeaning meaning;
    double odds = 0;  // that this stretch is a date of this meaning, against other text
};

double oddsWithin(const DateInstance& instance, const DateContext& context, std::size_t cells)
{
    const bool whole_line = instance.first_cell == 0 && instance.end_cell == cells;
    const double prior = whole_line ? whole_line_odds : date_prior_odds;
    double sum = 0;
    for (int year = context.earliest_year; year <= context.latest_year; ++year)
        sum += instance.odds(year);
    return prior * sum / (context.latest_year - context.earliest_year + 1);
}

std::string printed(const Line& line, const DateInstance& instance)
{
    Line stretch;
    stretch.cells.assign(line.cells.begin() + static_cast<long>(instance.first_cell),
                         line.cells.begin() + static_cast<long>(instance.end_cell));
    return writeTyped(stretch);
}

// The meanings with the odds of all the ways to come by each.
std::vector<Weighed> weighMeanings(const Line& line, const DateContext& context)
{
    std::vector<Weighed> all;
    for (const DateInstance& instance : findDates(line)) {
        const WrittenDate date = writeDate(instance, context.earliest_year, context.latest_year);
        if (date.years.empty())
            continue;
        const double odds = oddsWithin(instance, context, line.cells.size());
        const auto same = std::find_if(all.begin(), all.end(), [&](const Weighed& other) {
            return other.meaning.first_cell == instance.first_cell &&
                   other.meaning.end_cell == instance.end_cell && other.meaning.edtf == date.edtf;
        });
        if (same != all.end()) {
            same->odds += odds;
            continue;
        }
        all.push_back({{printed(line, instance), date.edtf, date.years, 0, instance.first_cell,
                        instance.end_cell},
                       odds});
    }
    return all;
}

bool overlap(const DateMeaning& a, const DateMeaning& b)
{
    return a.first_cell < b.end_cell && b.first_cell < a.end_cell;
}

}  // namespace

std::vector<DateMeaning> readDates(const Line& line, const DateContext& context)
{
    if (context.earliest_year > context.latest_year || context.earliest_year < 0 ||
        context.latest_year > 9999)
        throw std::invalid_argument("DateContext: earliest_year must not be after latest_year");
    const std::vector<Weighed> all = weighMeanings(line, context);
    std::vector<DateMeaning> meanings;
    for (const Weighed& one : all) {
        double rivals = 1;  // that it is other text
        for (const Weighed& other : all)
            if (overlap(one.meaning, other.meaning))
                rivals += other.odds;
        DateMeaning meaning = one.meaning;
        meaning.probability = one.odds / rivals;
        if (meaning.probability >= least_probability)
            meanings.push_back(std::move(meaning));
    }
    std::stable_sort(
        meanings.begin(), meanings.end(),
        [](const DateMeaning& a, const DateMeaning& b) { return a.probability > b.probability; });
    if (meanings.size() > most_meanings)
        meanings.resize(most_meanings);
    return meanings;
}

}  // namespace models
