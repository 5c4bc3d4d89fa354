#include "models/date_writing.h"

#include <algorithm>
#include <set>
#include <string_view>

#include "models/edtf.h"
#include "models/edtf_days.h"
#include "models/edtf_set.h"

namespace models {

namespace {

constexpr std::size_t most_members = 24;  // of a set of dates; beyond that only years are written

std::string padded(int number, std::size_t width)
{
    std::string text = std::to_string(number);
    text.insert(0, width > text.size() ? width - text.size() : 0, '0');
    return text;
}

// May these glyphs be this number?
bool canBe(const DateInstance& date, std::size_t first, std::size_t count, int number)
{
    for (std::size_t i = count; i-- > 0; number /= 10) {
        const std::vector<int>& digits = date.glyphs[first + i].digits;
        if (std::find(digits.begin(), digits.end(), number % 10) == digits.end())
            return false;
    }
    return number == 0;
}

bool canBeYear(const DateInstance& date, int year)
{
    return canBe(date, date.year_glyph, date.year_digits,
                 date.year_digits == 2 ? year % 100 : year);
}

// Digits with X for each unread one; empty when some digit was read as one or another.
std::string maskOf(const DateInstance& date, std::size_t first, std::size_t count)
{
    std::string mask;
    for (std::size_t i = first; i < first + count; ++i) {
        const DateGlyph& glyph = date.glyphs[i];
        if (!glyph.unread && glyph.digits.size() != 1)
            return {};
        mask += glyph.unread ? 'X' : static_cast<char>('0' + glyph.digits.front());
    }
    return mask;
}

// The years as one string if that can be (1940, 194X), otherwise one string a year.
std::vector<std::string> yearStrings(const DateInstance& date, const std::vector<int>& years)
{
    std::string mask = maskOf(date, date.year_glyph, date.year_digits);
    if (!mask.empty() && date.year_digits == 2) {
        const int century = years.front() / 100;
        const bool one_century = years.back() / 100 == century;
        mask = one_century ? padded(century, 2) + mask : std::string();
    }
    if (!mask.empty())
        return {mask};
    std::vector<std::string> all;
    for (const int year : years)
        all.push_back(padded(year, 4));
    return all;
}

std::vector<int> monthsOf(const DateInstance& date)
{
    std::vector<int> months;
    const double likeliest = *std::max_element(date.month_odds.begin(), date.month_odds.end());
    const int last = date.month_form == MonthForm::Quarter ? 4 : 12;
    for (int month = 1; month <= last; ++month) {
        const bool fits = date.month_digits > 0
                              ? canBe(date, date.month_glyph, date.month_digits, month)
                              : date.month_odds[static_cast<std::size_t>(month)] > likeliest / 20;
        if (fits)
            months.push_back(month);
    }
    return months;
}

// The months as one string if that can be (03, X2, XX), otherwise one string a month. A quarter is
// 33 to 36.
std::vector<std::string> monthStrings(const DateInstance& date, const std::vector<int>& months)
{
    const int shift = date.month_form == MonthForm::Quarter ? 32 : 0;
    std::vector<std::string> all;
    for (const int month : months)
        all.push_back(padded(month + shift, 2));
    if (all.size() < 2 || shift > 0 || date.month_digits == 0)
        return all;
    std::string mask = maskOf(date, date.month_glyph, date.month_digits);
    if (mask.size() == 1)
        mask.insert(mask.begin(), '0');
    return mask.empty() ? all : std::vector<std::string>{mask};
}

bool isDay(int day, int month)
{
    constexpr int leap_year = 2000;  // the year may be one
    return month >= 1 && month <= 12 && day >= 1 && day <= daysOfMonth(leap_year, month);
}

std::string dayTail(int month, int day)
{
    return std::string(1, '-').append(padded(month, 2)).append(1, '-').append(padded(day, 2));
}

// "-03-12" for every reading of day and month. A day in figures beside a month in figures may come
// first or second, as the order says, unless only the other order gives a day.
std::set<std::string> dayStrings(const DateInstance& date, DayOrder order)
{
    std::set<std::string> day_first, month_first;
    for (int first = 1; first <= 31; ++first) {
        if (!canBe(date, date.day_glyph, date.day_digits, first))
            continue;
        for (int second = 1; second <= 31; ++second) {
            const bool numeric = date.month_digits > 0;
            const bool fits =
                numeric ? canBe(date, date.month_glyph, date.month_digits, second)
                        : second <= 12 && date.month_odds[static_cast<std::size_t>(second)] > 0;
            if (!fits)
                continue;
            if (isDay(first, second))
                day_first.insert(dayTail(second, first));
            if (numeric && isDay(second, first))
                month_first.insert(dayTail(first, second));
        }
    }
    if (order == DayOrder::DayFirst && !day_first.empty())
        return day_first;
    if (order != DayOrder::MonthFirst || month_first.empty())
        month_first.merge(day_first);
    return month_first;
}

bool hasDoubt(const DateInstance& date)
{
    return std::any_of(date.glyphs.begin(), date.glyphs.end(),
                       [](const DateGlyph& glyph) { return glyph.doubtful; });
}

// A question mark behind every date of the text: each member of a set is as doubtful as the digit.
std::string inDoubt(const std::string& edtf)
{
    std::string text;
    for (std::size_t i = 0; i < edtf.size(); ++i) {
        text += edtf[i];
        const auto is_part = [](char c) {
            return std::string_view("[]{},.").find(c) == std::string_view::npos;
        };
        if (is_part(edtf[i]) && (i + 1 == edtf.size() || !is_part(edtf[i + 1])))
            text += '?';
    }
    return text;
}

std::string setOf(const std::vector<std::string>& members)
{
    std::string text;
    for (const std::string& member : members)
        text.append(text.empty() ? "" : ",").append(member);
    if (members.size() < 2)
        return text;
    text.insert(text.begin(), '[');
    return text += ']';
}

// Month (and day) behind the year; one empty string when none is printed or too many fit; none when
// the stretch can be no date.
std::vector<std::string> tails(const DateInstance& date, DayOrder order)
{
    if (date.month_form == MonthForm::None)
        return {""};
    if (date.day_digits > 0) {
        const std::set<std::string> days = dayStrings(date, order);
        return {days.begin(), days.end()};
    }
    std::vector<std::string> all = monthStrings(date, monthsOf(date));
    for (std::string& month : all)
        month.insert(month.begin(), '-');
    return all;
}

}  // namespace

WrittenDate writeDate(const DateInstance& date, const DateContext& context)
{
    WrittenDate written;
    for (int year = context.earliest_year; year <= context.latest_year; ++year)
        if (canBeYear(date, year))
            written.years.push_back(year);
    const std::vector<std::string> behind = tails(date, context.day_order);
    if (written.years.empty() || behind.empty())
        return {};
    const std::vector<std::string> years = yearStrings(date, written.years);
    const bool years_alone =
        date.month_form == MonthForm::None || years.size() * behind.size() > most_members;
    if (years_alone && years.size() > 1) {
        written.edtf = simplestForm(setOfYears({written.years.begin(), written.years.end()}),
                                    RunMeans::OneDate)
                           .value_or("");
    } else if (years_alone) {
        written.edtf = years.front();
    } else {
        std::vector<std::string> members;
        for (const std::string& year : years)
            for (const std::string& tail : behind)
                members.push_back(year + tail);
        written.edtf = setOf(members);
    }
    if (hasDoubt(date))
        written.edtf = inDoubt(written.edtf);
    if (!edtfYearBounds(written.edtf))
        return {};
    return written;
}

}  // namespace models
