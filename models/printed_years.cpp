#include "models/printed_years.h"

#include <algorithm>
#include <numeric>

#include "models/role_words.h"
#include "models/roles.h"

namespace models {

namespace {

// A date on a stamp is not always the year made: inspected later, patterned before.
constexpr double date_is_later = 0.012, date_is_earlier = 0.004, fading = 0.6;
constexpr double inspected_later = 0.4, contracted_earlier = 0.5;
constexpr double patterned_earlier = 0.9, pattern_fading = 0.9;

// How often the printed year is later and earlier than the year made, how fast that falls off from
// year to year, and how often it says nothing of the making.
struct PrintedApart {
    double later = date_is_later, earlier = date_is_earlier, earlier_fading = fading;
    double elsewhere = 0;
};

// Of a date, by the roles of the stretch that ends with its year: what is made not after the date
// comes before it, what is made not before it comes behind, behind a pattern by many years.
PrintedApart printedApart(const std::vector<RoleSpan>& roles, std::size_t end_cell)
{
    PrintedApart apart;
    for (const RoleSpan& span : roles) {
        if (span.first_cell >= end_cell || end_cell > span.end_cell)
            continue;
        const bool is_pattern = span.role == LineRole::Pattern;
        switch (boundOf(span.role)) {
            case DateBound::NotAfter:
                apart.later += inspected_later * span.probability;
                break;
            case DateBound::NotBefore:
                apart.earlier +=
                    (is_pattern ? patterned_earlier : contracted_earlier) * span.probability;
                if (is_pattern)
                    apart.earlier_fading = std::max(apart.earlier_fading, pattern_fading);
                break;
            case DateBound::None:
                apart.elsewhere += span.probability;
                break;
            case DateBound::Exact:
                break;
        }
    }
    // That digits alone could be another number is weighed elsewhere; here a word must say so.
    apart.elsewhere = apart.elsewhere > 0.5 ? std::min(apart.elsewhere, 1.0) : 0;
    return apart;
}

// Lets a printed year stand for one made some years before or after, or for any.
std::vector<double> softened(const std::vector<double>& odds, const PrintedApart& apart)
{
    std::vector<double> soft(odds.size());
    double later = 0, earlier = 0;
    for (std::size_t i = odds.size(); i-- > 0;) {
        soft[i] = (1 - apart.later - apart.earlier) * odds[i] + apart.later * later;
        later = fading * later + (1 - fading) * odds[i];
    }
    for (std::size_t i = 0; i < odds.size(); ++i) {
        soft[i] += apart.earlier * earlier;
        earlier = apart.earlier_fading * earlier + (1 - apart.earlier_fading) * odds[i];
    }
    const double any_year =
        std::accumulate(odds.begin(), odds.end(), 0.0) / static_cast<double>(odds.size());
    for (double& odd : soft)
        odd += apart.elsewhere * (any_year - odd);
    return soft;
}

// The roles of a line that a word leads; empty where none does, which is most often so.
std::vector<RoleSpan> ledRoles(const Line& line, const YearRange& range)
{
    const std::vector<RoleWord> words = roleWordsOf(line);
    if (std::none_of(words.begin(), words.end(),
                     [](const RoleWord& word) { return leadOf(word.text).has_value(); }))
        return {};
    return guessRoles({line}, {{range.first, range.last}, {}, {}}).front();
}

}  // namespace

PrintedYears::PrintedYears(const Line& line, const YearRange& range) : roles_(ledRoles(line, range))
{
}

std::vector<double> PrintedYears::asMade(const std::vector<double>& odds,
                                         std::size_t end_cell) const
{
    return softened(odds, printedApart(roles_, end_cell));
}

}  // namespace models
