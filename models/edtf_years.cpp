#include <algorithm>
#include <stdexcept>

#include "models/edtf.h"
#include "models/edtf_days.h"

namespace models {

namespace {

std::string fourDigits(int year)
{
    std::string text = std::to_string(year);
    text.insert(0, 4 - text.size(), '0');
    return text;
}

bool hasDoubt(const EdtfEnd& end)
{
    const EdtfDate& date = end.date;
    return date.year.doubt != EdtfDoubt::None ||
           (date.month && date.month->doubt != EdtfDoubt::None) ||
           (date.day && date.day->doubt != EdtfDoubt::None);
}

// The year of a limit; nullopt also where it has none. `fits` becomes false for a year that marks
// and registers cannot have.
std::optional<int> yearOf(const EdtfLimit& limit, bool& fits)
{
    if (limit.kind != EdtfEnd::Kind::Date)
        return std::nullopt;
    fits = fits && limit.day.year >= 0 && limit.day.year <= 9999;
    return static_cast<int>(limit.day.year);
}

// "1938..1940", or the years one by one where the run is short.
std::string runText(int first, int last)
{
    std::string text = fourDigits(first);
    if (last == first + 1)
        text += ",";
    if (last > first + 1)
        text += "..";
    return last > first ? text + fourDigits(last) : text;
}

}  // namespace

std::optional<YearBounds> edtfYearBounds(const std::string& edtf)
{
    const auto parsed = parseEdtf(edtf);
    if (!std::holds_alternative<Edtf>(parsed))
        return std::nullopt;
    const Edtf& value = std::get<Edtf>(parsed);
    const EdtfDays days = daysOf(value);
    bool fits = true;
    YearBounds bounds{yearOf(days.first, fits), yearOf(days.last, fits), false};
    if (!fits || (!bounds.first && !bounds.last))
        return std::nullopt;
    for (const EdtfMember& member : value.members)
        bounds.soft = bounds.soft || hasDoubt(member.from) || (member.to && hasDoubt(*member.to));
    return bounds;
}

std::string simplestEdtf(std::vector<int> years)
{
    std::sort(years.begin(), years.end());
    years.erase(std::unique(years.begin(), years.end()), years.end());
    if (years.empty())
        return {};
    if (years.front() < 0 || years.back() > 9999)
        throw std::invalid_argument("simplestEdtf: years must be 0 to 9999");
    const int first = years.front(), last = years.back();
    if (years.size() == 1)
        return fourDigits(first);
    const bool one_run = static_cast<std::size_t>(last - first) + 1 == years.size();
    if (one_run && first % 100 == 0 && years.size() == 100)
        return fourDigits(first).substr(0, 2) + "XX";
    if (one_run && first % 10 == 0 && years.size() == 10)
        return fourDigits(first).substr(0, 3) + "X";
    std::string members;
    for (std::size_t i = 0; i < years.size();) {
        std::size_t end = i + 1;
        while (end < years.size() && years[end] == years[end - 1] + 1)
            ++end;
        members.append(members.empty() ? "" : ",").append(runText(years[i], years[end - 1]));
        i = end;
    }
    members.insert(members.begin(), '[');
    return members += ']';
}

}  // namespace models
