#include "models/year_weights.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "models/edtf.h"

namespace models {

namespace {

// How fast a year's weight falls off beyond a limit, in years: e-fold. Common practice, no source.
constexpr double before_sharp = 1.2, before_soft = 3, after_sharp = 2.5, after_soft = 5;
constexpr double least_weight = 0.002;
constexpr int margin_years = 10, type_margin_years = 5;
constexpr int earliest = 1700, latest = 2100;  // beyond these a year in a register is a slip

std::optional<YearBounds> boundsOf(const std::string& edtf)
{
    return edtf.empty() ? std::nullopt : edtfYearBounds(edtf);
}

void widen(YearRange& range, const std::string& edtf)
{
    const auto bounds = boundsOf(edtf);
    if (!bounds)
        return;
    for (const std::optional<int>& year : {bounds->first, bounds->last})
        if (year && *year >= earliest && *year <= latest) {
            range.first = std::min(range.first, *year);
            range.last = std::max(range.last, *year);
        }
}

std::string limitInWords(const YearBounds& bounds, const std::optional<int>& year)
{
    return (bounds.soft ? "about " : "") + std::to_string(*year);
}

}  // namespace

YearRange yearsOf(const MakerRegister& known)
{
    YearRange range{std::numeric_limits<int>::max(), std::numeric_limits<int>::min()};
    for (const Maker& maker : known.makers)
        for (const std::string& edtf : {maker.from, maker.to})
            widen(range, edtf);
    for (const Mark& mark : known.marks)
        for (const std::string& edtf : {mark.from, mark.to})
            widen(range, edtf);
    for (const ItemType& type : known.item_types)
        for (const std::string& edtf : {type.introduced, type.withdrawn})
            widen(range, edtf);
    if (range.first > range.last)
        return {};
    return {range.first - margin_years, range.last + margin_years};
}

YearRange yearsOf(const ItemType& type, const YearRange& of_register)
{
    YearRange range = of_register;
    const auto begin = boundsOf(type.introduced), end = boundsOf(type.withdrawn);
    if (begin && begin->first)
        range.first = std::max(range.first, *begin->first - type_margin_years);
    if (end && end->last)
        range.last = std::min(range.last, *end->last + type_margin_years);
    return range;
}

std::vector<double> softYears(const std::string& from, const std::string& to,
                              const YearRange& range)
{
    const auto begin = boundsOf(from), end = boundsOf(to);
    const bool has_begin = begin && begin->first, has_end = end && end->last;
    const int first = has_begin ? *begin->first : range.first + margin_years;
    const int last = has_end ? *end->last : range.last - margin_years;
    const double before = has_begin && !begin->soft ? before_sharp : before_soft;
    const double after = has_end && !end->soft ? after_sharp : after_soft;
    std::vector<double> weights;
    for (int year = range.first; year <= range.last; ++year) {
        double weight = 1;
        if (year < first)
            weight = std::exp((year - first) / before);
        if (year > last)
            weight = std::min(weight, std::exp((last - year) / after));
        weights.push_back(std::max(weight, least_weight));
    }
    return weights;
}

bool liesWithin(int year, const std::string& from, const std::string& to)
{
    const auto begin = boundsOf(from), end = boundsOf(to);
    return !(begin && begin->first && year < *begin->first) &&
           !(end && end->last && year > *end->last);
}

std::string yearsInWords(const std::string& from, const std::string& to)
{
    const auto begin = boundsOf(from), end = boundsOf(to);
    const bool has_begin = begin && begin->first, has_end = end && end->last;
    if (has_begin && has_end)
        return limitInWords(*begin, begin->first) + " to " + limitInWords(*end, end->last);
    if (has_begin)
        return std::string("from ").append(limitInWords(*begin, begin->first));
    return has_end ? std::string("until ").append(limitInWords(*end, end->last)) : std::string();
}

}  // namespace models
