#include "models/edtf.h"

#include <algorithm>
#include <stdexcept>

namespace models {

namespace {

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

bool isQualifier(char c)
{
    return c == '?' || c == '~' || c == '%';
}

std::string fourDigits(int year)
{
    std::string text = std::to_string(year);
    text.insert(0, 4 - text.size(), '0');
    return text;
}

std::string twoDigits(int number)
{
    return {static_cast<char>('0' + number / 10), static_cast<char>('0' + number % 10)};
}

bool fits(const std::string& mask, const std::string& digits)
{
    return std::equal(mask.begin(), mask.end(), digits.begin(), digits.end(),
                      [](char m, char d) { return m == 'X' || m == d; });
}

int daysOf(int year, int month)
{
    if (month == 2)
        return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0 ? 29 : 28;
    return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
}

// Year, month and day as masks of digits and X; month and day may be empty.
struct DateMask {
    std::string year, month, day;
    bool soft = false;

    int parts() const { return 1 + !month.empty() + !day.empty(); }
};

std::vector<std::string> split(const std::string& text, char separator)
{
    std::vector<std::string> parts(1);
    for (const char c : text) {
        if (c == separator)
            parts.emplace_back();
        else
            parts.back() += c;
    }
    return parts;
}

struct MaskPart {
    std::string mask;
    bool soft = false;
};

// A part with its qualifier, left or right of it but not both; nullopt when it is not `length`
// digits or X.
std::optional<MaskPart> readPart(std::string text, std::size_t length)
{
    MaskPart part;
    if (!text.empty() && isQualifier(text.back())) {
        part.soft = true;
        text.pop_back();
    } else if (!text.empty() && isQualifier(text.front())) {
        part.soft = true;
        text.erase(0, 1);
    }
    const bool digits =
        std::all_of(text.begin(), text.end(), [](char c) { return isDigit(c) || c == 'X'; });
    if (text.size() != length || !digits)
        return std::nullopt;
    part.mask = text;
    return part;
}

std::optional<DateMask> readMask(const std::string& text)
{
    const std::vector<std::string> parts = split(text, '-');
    if (parts.size() > 3)
        return std::nullopt;
    DateMask mask;
    std::string* const places[] = {&mask.year, &mask.month, &mask.day};
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const auto part = readPart(parts[i], i == 0 ? 4 : 2);
        if (!part)
            return std::nullopt;
        *places[i] = part->mask;
        mask.soft = mask.soft || part->soft;
    }
    return mask;
}

bool isSubYearGrouping(const std::string& month)
{
    return month.find('X') == std::string::npos && month >= "21" && month <= "41";
}

// Does some day of this year fit the mask?
bool happensIn(int year, const DateMask& mask)
{
    if (mask.month.empty() || isSubYearGrouping(mask.month))
        return mask.day.empty();
    for (int month = 1; month <= 12; ++month) {
        if (!fits(mask.month, twoDigits(month)))
            continue;
        if (mask.day.empty())
            return true;
        for (int day = 1; day <= daysOf(year, month); ++day)
            if (fits(mask.day, twoDigits(day)))
                return true;
    }
    return false;
}

std::optional<YearBounds> boundsOf(const DateMask& mask)
{
    YearBounds bounds;
    bounds.soft = mask.soft;
    const bool year_is_read = mask.year.find('X') == std::string::npos;
    const int first = year_is_read ? std::stoi(mask.year) : 0;
    const int last = year_is_read ? first : 9999;
    for (int year = first; year <= last; ++year) {
        if (!fits(mask.year, fourDigits(year)) || !happensIn(year, mask))
            continue;
        if (!bounds.first)
            bounds.first = year;
        bounds.last = year;
    }
    return bounds.first ? std::optional(bounds) : std::nullopt;
}

std::optional<YearBounds> dateBounds(const std::string& text)
{
    const auto mask = readMask(text);
    return mask ? boundsOf(*mask) : std::nullopt;
}

// From the start of `from` to the end of `to`; nullopt when that runs backwards.
std::optional<YearBounds> span(const std::optional<YearBounds>& from,
                               const std::optional<YearBounds>& to)
{
    YearBounds bounds;
    if (from)
        bounds.first = from->first;
    if (to)
        bounds.last = to->last;
    bounds.soft = (from && from->soft) || (to && to->soft);
    if (!bounds.first && !bounds.last)
        return std::nullopt;
    if (bounds.first && bounds.last && *bounds.first > *bounds.last)
        return std::nullopt;
    return bounds;
}

bool runsBackwards(const std::string& from, const std::string& to)
{
    const auto first = readMask(from), last = readMask(to);
    const bool masked = (from + to).find('X') != std::string::npos;
    if (!first || !last || masked || first->year != last->year)
        return false;  // years are compared by their bounds
    if (first->month != last->month)
        return !last->month.empty() && first->month > last->month;
    return !last->day.empty() && first->day > last->day;
}

std::optional<YearBounds> intervalBounds(const std::string& text)
{
    const std::vector<std::string> sides = split(text, '/');
    if (sides.size() != 2)
        return std::nullopt;
    std::optional<YearBounds> bounds[2];
    for (std::size_t i = 0; i < 2; ++i) {
        if (sides[i].empty() || sides[i] == "..")
            continue;
        bounds[i] = dateBounds(sides[i]);
        if (!bounds[i])
            return std::nullopt;
    }
    return runsBackwards(sides[0], sides[1]) ? std::nullopt : span(bounds[0], bounds[1]);
}

// A run of a set: "1938..1940"; open on the left only as its first member, on the right only as its
// last.
std::optional<YearBounds> runBounds(const std::string& member, bool is_first, bool is_last)
{
    const std::size_t dots = member.find("..");
    const std::string from = member.substr(0, dots), to = member.substr(dots + 2);
    if ((from.empty() && !is_first) || (to.empty() && !is_last))
        return std::nullopt;
    const auto first = from.empty() ? std::nullopt : dateBounds(from);
    const auto last = to.empty() ? std::nullopt : dateBounds(to);
    if ((!from.empty() && !first) || (!to.empty() && !last))
        return std::nullopt;
    if (first && last && readMask(from)->parts() != readMask(to)->parts())
        return std::nullopt;
    return runsBackwards(from, to) ? std::nullopt : span(first, last);
}

std::optional<YearBounds> setBounds(const std::string& inside)
{
    const std::vector<std::string> members = split(inside, ',');
    std::optional<YearBounds> hull;
    for (std::size_t i = 0; i < members.size(); ++i) {
        const bool is_run = members[i].find("..") != std::string::npos;
        const auto bounds = is_run ? runBounds(members[i], i == 0, i + 1 == members.size())
                                   : dateBounds(members[i]);
        if (!bounds)
            return std::nullopt;
        if (!hull) {
            hull = bounds;
            continue;
        }
        const bool open_left = !hull->first || !bounds->first;
        const bool open_right = !hull->last || !bounds->last;
        hull->first =
            open_left ? std::nullopt : std::optional(std::min(*hull->first, *bounds->first));
        hull->last =
            open_right ? std::nullopt : std::optional(std::max(*hull->last, *bounds->last));
        hull->soft = hull->soft || bounds->soft;
    }
    return hull;
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
    if (edtf.size() > 200)
        return std::nullopt;
    if (edtf.find('/') != std::string::npos)
        return intervalBounds(edtf);
    const bool one_of = edtf.size() > 2 && edtf.front() == '[' && edtf.back() == ']';
    const bool all_of = edtf.size() > 2 && edtf.front() == '{' && edtf.back() == '}';
    if (one_of || all_of)
        return setBounds(edtf.substr(1, edtf.size() - 2));
    return dateBounds(edtf);
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
