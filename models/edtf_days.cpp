#include "models/edtf_days.h"

#include <algorithm>
#include <array>
#include <bit>

namespace models {

namespace {

constexpr int first_part = 21, last_part = 41;
constexpr std::int64_t a_leap_year = 2000;

// First month and number of months of each part of a year, from 21 on.
struct Part {
    int month, months;
};
constexpr std::array<Part, last_part - first_part + 1> parts{{
    {3, 3}, {6, 3},  {9, 3}, {12, 3},  // seasons, taken as those of the north
    {3, 3}, {6, 3},  {9, 3}, {12, 3},  // of the north
    {9, 3}, {12, 3}, {3, 3}, {6, 3},   // of the south
    {1, 3}, {4, 3},  {7, 3}, {10, 3},  // quarters
    {1, 4}, {5, 4},  {9, 4},           // thirds
    {1, 6}, {7, 6},                    // halves
}};

std::int64_t tenTo(int power)
{
    std::int64_t result = 1;
    for (; power > 0; --power)
        result *= 10;
    return result;
}

int digitsOf(std::int64_t number)
{
    int digits = 1;
    for (; number >= 10; number /= 10)
        ++digits;
    return digits;
}

// The years without their sign, smallest and largest.
struct Magnitudes {
    std::int64_t least, most;
};

Magnitudes magnitudesOf(const EdtfYear& year)
{
    std::int64_t least = year.number * tenTo(year.exponent), unread = 0;
    for (int place = 0; place < 4; ++place)
        unread += (year.unread >> place & 1U) != 0 ? 9 * tenTo(place) : 0;
    if (year.significant > 0) {
        const int digits = year.letter ? digitsOf(least) : 4;
        const std::int64_t block = tenTo(std::max(0, digits - year.significant));
        least -= least % block;
        unread = block - 1;
    }
    const std::int64_t most = least + unread;
    if (year.negative && least == 0)  // the year zero has no sign
        least = year.unread == 0 ? 1 : tenTo(std::countr_zero(year.unread));
    return {least, most};
}

// The day of a month that fits, first or last; 0 when there is none.
int dayThatFits(const std::optional<EdtfDigits>& written, int days, bool latest)
{
    if (!written)
        return latest ? days : 1;
    if (written->unread == 0)
        return written->number >= 1 && written->number <= days ? static_cast<int>(written->number)
                                                               : 0;
    for (int i = 1; i <= days; ++i) {
        const int day = latest ? days + 1 - i : i;
        if (fitsDigits(*written, day))
            return day;
    }
    return 0;
}

std::optional<CalendarDay> dayInYear(const EdtfDate& date, std::int64_t year, bool latest)
{
    for (int i = 1; i <= 12; ++i) {
        const int month = latest ? 13 - i : i;
        if (date.month && !fitsDigits(*date.month, month))
            continue;
        const int day = dayThatFits(date.day, daysOfMonth(year, month), latest);
        if (day != 0)
            return CalendarDay{year, month, day};
    }
    return std::nullopt;
}

std::optional<CalendarDay> outermostDay(const EdtfDate& date, bool latest)
{
    const std::int64_t outermost = latest ? lastYearOf(date.year) : firstYearOf(date.year);
    if (date.isPartOfYear()) {
        const int part = static_cast<int>(date.month->number);
        return latest ? lastDayOfPart(outermost, part) : firstDayOfPart(outermost, part);
    }
    const auto day = dayInYear(date, outermost, latest);
    if (day || date.year.unread == 0 || !dayInYear(date, a_leap_year, latest))
        return day;
    const int years = numberOfYears(date.year);
    for (int i = 1; i < years; ++i)
        if (const auto other =
                dayInYear(date, yearAt(date.year, latest ? years - 1 - i : i), latest))
            return other;
    return std::nullopt;
}

EdtfLimit limitOf(const EdtfEnd& end, bool latest)
{
    if (end.kind != EdtfEnd::Kind::Date)
        return {end.kind, {}};
    const auto day = latest ? lastDayOf(end.date) : firstDayOf(end.date);
    return {end.kind, day.value_or(CalendarDay{})};
}

const EdtfEnd& lastEnd(const EdtfMember& member)
{
    return member.to ? *member.to : member.from;
}

bool couldBe(const EdtfMember& member, const CalendarDay& day)
{
    if (!member.to)
        return couldBe(member.from.date, day);
    const EdtfLimit first = limitOf(member.from, false), last = limitOf(*member.to, true);
    return (first.kind != EdtfEnd::Kind::Date || first.day <= day) &&
           (last.kind != EdtfEnd::Kind::Date || day <= last.day);
}

bool couldBeIn(const EdtfMember& member, std::int64_t year)
{
    if (member.to) {
        const EdtfLimit first = limitOf(member.from, false), last = limitOf(*member.to, true);
        return (first.kind != EdtfEnd::Kind::Date || first.day.year <= year) &&
               (last.kind != EdtfEnd::Kind::Date || year <= last.day.year);
    }
    const EdtfDate& date = member.from.date;
    if (!date.isPartOfYear())
        return fitsYear(date.year, year) && dayInYear(date, year, false).has_value();
    const int part = static_cast<int>(date.month->number);
    return fitsYear(date.year, year) ||
           (fitsYear(date.year, year - 1) && lastDayOfPart(year - 1, part).year == year);
}

}  // namespace

int daysOfMonth(std::int64_t year, int month)
{
    if (month == 2)
        return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0 ? 29 : 28;
    return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
}

bool exists(const CalendarDay& day)
{
    return day.month >= 1 && day.month <= 12 && day.day >= 1 &&
           day.day <= daysOfMonth(day.year, day.month);
}

std::int64_t firstYearOf(const EdtfYear& year)
{
    const Magnitudes years = magnitudesOf(year);
    return year.negative ? -years.most : years.least;
}

std::int64_t lastYearOf(const EdtfYear& year)
{
    const Magnitudes years = magnitudesOf(year);
    return year.negative ? -years.least : years.most;
}

bool fitsYear(const EdtfYear& written, std::int64_t year)
{
    if (year < firstYearOf(written) || year > lastYearOf(written))
        return false;
    return written.unread == 0 ||
           fitsDigits(written, static_cast<int>(written.negative ? -year : year));
}

int numberOfYears(const EdtfYear& masked)
{
    const auto years = static_cast<int>(tenTo(std::popcount(masked.unread)));
    return masked.negative && masked.number == 0 ? years - 1 : years;
}

std::int64_t yearAt(const EdtfYear& masked, int index)
{
    int rest = index;
    if (masked.negative)  // counted from the earliest, which is the largest number
        rest = static_cast<int>(tenTo(std::popcount(masked.unread))) - 1 - index;
    std::int64_t year = masked.number;
    for (int place = 0; place < 4; ++place) {
        if ((masked.unread >> place & 1U) == 0)
            continue;
        year += rest % 10 * tenTo(place);
        rest /= 10;
    }
    return masked.negative ? -year : year;
}

bool fitsDigits(const EdtfDigits& written, int number)
{
    if (written.unread == 0)
        return written.number == number;
    std::int64_t rest = written.number;
    for (unsigned unread = written.unread; rest != 0 || number != 0; unread >>= 1U) {
        if ((unread & 1U) == 0 && rest % 10 != number % 10)
            return false;
        rest /= 10;
        number /= 10;
    }
    return true;
}

CalendarDay firstDayOfPart(std::int64_t year, int part)
{
    return {year, parts.at(static_cast<std::size_t>(part - first_part)).month, 1};
}

CalendarDay lastDayOfPart(std::int64_t year, int part)
{
    const Part& known = parts.at(static_cast<std::size_t>(part - first_part));
    const int month = known.month + known.months - 1;
    CalendarDay last{month > 12 ? year + 1 : year, month > 12 ? month - 12 : month, 1};
    last.day = daysOfMonth(last.year, last.month);
    return last;
}

std::optional<CalendarDay> firstDayOf(const EdtfDate& date)
{
    return outermostDay(date, false);
}

std::optional<CalendarDay> lastDayOf(const EdtfDate& date)
{
    return outermostDay(date, true);
}

EdtfDays daysOf(const Edtf& edtf)
{
    EdtfDays hull{limitOf(edtf.members.at(0).from, false),
                  limitOf(lastEnd(edtf.members.at(0)), true)};
    for (const EdtfMember& member : edtf.members) {
        const EdtfLimit first = limitOf(member.from, false), last = limitOf(lastEnd(member), true);
        if (first.kind == EdtfEnd::Kind::Open ||
            (hull.first.kind == EdtfEnd::Kind::Date && first.kind == hull.first.kind &&
             first.day < hull.first.day))
            hull.first = first;
        if (last.kind == EdtfEnd::Kind::Open ||
            (hull.last.kind == EdtfEnd::Kind::Date && last.kind == hull.last.kind &&
             hull.last.day < last.day))
            hull.last = last;
    }
    return hull;
}

bool couldBe(const EdtfDate& date, const CalendarDay& day)
{
    if (!exists(day))
        return false;
    if (date.isPartOfYear()) {
        const int part = static_cast<int>(date.month->number);
        for (const std::int64_t year : {day.year, day.year - 1})
            if (fitsYear(date.year, year) && firstDayOfPart(year, part) <= day &&
                day <= lastDayOfPart(year, part))
                return true;
        return false;
    }
    return fitsYear(date.year, day.year) && (!date.month || fitsDigits(*date.month, day.month)) &&
           (!date.day || fitsDigits(*date.day, day.day));
}

bool couldBe(const Edtf& edtf, const CalendarDay& day)
{
    return exists(day) &&
           std::any_of(edtf.members.begin(), edtf.members.end(),
                       [&](const EdtfMember& member) { return couldBe(member, day); });
}

bool couldBeIn(const Edtf& edtf, std::int64_t year)
{
    return std::any_of(edtf.members.begin(), edtf.members.end(),
                       [&](const EdtfMember& member) { return couldBeIn(member, year); });
}

}  // namespace models
