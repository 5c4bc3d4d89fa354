#include "models/role_stretches.h"

#include <algorithm>

#include "models/letters.h"
#include "models/role_words.h"

namespace models {

namespace {

constexpr double least_date = 0.04;

bool overlaps(const DateMeaning& date, const std::vector<DateMeaning>& kept)
{
    return std::any_of(kept.begin(), kept.end(), [&](const DateMeaning& other) {
        return date.first_cell < other.end_cell && other.first_cell < date.end_cell;
    });
}

// A date within a longer word is none of its own: 19407 holds no 1940.
bool fillsWords(const DateMeaning& date, const std::vector<RoleWord>& words)
{
    const auto begins = std::any_of(words.begin(), words.end(), [&](const RoleWord& word) {
        return word.first_cell == date.first_cell;
    });
    const auto ends = std::any_of(words.begin(), words.end(), [&](const RoleWord& word) {
        return word.end_cell == date.end_cell;
    });
    return begins && ends;
}

// The likeliest places of dates in a part of a line, none over another, each with the probability
// of all its meanings together.
std::vector<DateMeaning> datePlaces(const Line& line, const std::vector<RoleWord>& words,
                                    const DateContext& context)
{
    if (words.empty())
        return {};
    const std::size_t begin = words.front().first_cell;
    Line part;
    part.cells.assign(line.cells.begin() + static_cast<std::ptrdiff_t>(begin),
                      line.cells.begin() + static_cast<std::ptrdiff_t>(words.back().end_cell));
    std::vector<DateMeaning> kept;
    for (DateMeaning date : readDates(part, context)) {
        date.first_cell += begin;
        date.end_cell += begin;
        const auto same = std::find_if(kept.begin(), kept.end(), [&](const DateMeaning& other) {
            return other.first_cell == date.first_cell && other.end_cell == date.end_cell;
        });
        if (same != kept.end())
            same->probability = std::min(1.0, same->probability + date.probability);
        else if (date.probability >= least_date && fillsWords(date, words) && !overlaps(date, kept))
            kept.push_back(std::move(date));
    }
    std::sort(kept.begin(), kept.end(), [](const DateMeaning& a, const DateMeaning& b) {
        return a.first_cell < b.first_cell;
    });
    return kept;
}

// The same of the whole line. A word that leads is no part of a date, nor is the number that LOT,
// SIZE or MK leads to: REP. 1944 holds no SEP, LOT 12 1941 no December.
std::vector<DateMeaning> datePlacesBetweenLeads(const Line& line,
                                                const std::vector<RoleWord>& words,
                                                const DateContext& context)
{
    std::vector<DateMeaning> all;
    std::vector<RoleWord> part;
    const auto finishPart = [&] {
        const std::vector<DateMeaning> dates = datePlaces(line, part, context);
        all.insert(all.end(), dates.begin(), dates.end());
        part.clear();
    };
    bool leads_number = false;
    for (const RoleWord& word : words) {
        const std::optional<LineRole> lead = leadOf(word.text);
        if (lead) {
            finishPart();
            leads_number =
                lead == LineRole::Size || lead == LineRole::Pattern || lead == LineRole::Other;
            continue;
        }
        part.push_back(word);
        if (leads_number)
            finishPart();
        leads_number = false;
    }
    finishPart();
    return all;
}

// The word that leads what comes next, until it is used up.
struct Leading {
    std::optional<LineRole> role;
    bool is_number = false;

    void see(const RoleWord& word);
};

// NO behind another leading word changes nothing (CONTRACT NO). A number uses up what leads to
// one; a contract's and an inspector's have a date behind them.
void Leading::see(const RoleWord& word)
{
    if (leadsNumber(word.text) && role)
        return;
    if (const std::optional<LineRole> leads = leadOf(word.text)) {
        role = leads;
        is_number = leadsNumber(word.text);
    } else if (formOf(word.text).digits > 0 && role != LineRole::Contract &&
               role != LineRole::Inspection) {
        *this = {};
    }
}

}  // namespace

std::vector<RoleStretch> roleStretches(const Line& line, const DateContext& context)
{
    const std::vector<RoleWord> words = roleWordsOf(line);
    const std::vector<DateMeaning> dates = datePlacesBetweenLeads(line, words, context);
    std::vector<RoleStretch> stretches;
    auto date = dates.begin();
    Leading lead;
    bool begins = true;
    for (const RoleWord& word : words) {
        while (date != dates.end() && date->end_cell <= word.first_cell)
            ++date;
        if (date != dates.end() && word.first_cell >= date->first_cell) {
            // MADE leads a maker, or the date of the making.
            if (lead.role == LineRole::Maker)
                lead = {LineRole::Date, false};
            if (word.first_cell == date->first_cell)
                stretches.push_back({date->first_cell, date->end_cell, lead.role,
                                     std::min(date->probability, 0.99), lead.is_number});
            begins = true;
            if (word.end_cell == date->end_cell)
                lead = {};
            continue;
        }
        const Leading before = lead;
        lead.see(word);
        const bool leads = leadOf(word.text).has_value(), symbol = word.text == property_arrow;
        if (leads)
            stretches.push_back({word.first_cell, word.end_cell, lead.role, 0, lead.is_number});
        else if (begins || symbol)
            stretches.push_back({word.first_cell, word.end_cell, before.role, 0, before.is_number});
        else
            stretches.back().end_cell = word.end_cell;
        begins = symbol;
    }
    return stretches;
}

}  // namespace models
