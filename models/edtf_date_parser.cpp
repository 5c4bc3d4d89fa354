#include "models/edtf_date_parser.h"

#include "models/edtf_days.h"

namespace models {

namespace {

constexpr int most_year_digits = 18;  // so that every year and its neighbours fit 64 bits

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

std::optional<EdtfDoubt> doubtSign(char c)
{
    switch (c) {
        case '?':
            return EdtfDoubt::Uncertain;
        case '~':
            return EdtfDoubt::Approximate;
        case '%':
            return EdtfDoubt::Both;
        default:
            return std::nullopt;
    }
}

}  // namespace

bool EdtfDateParser::date(EdtfDate& date)
{
    if (!year(date.year))
        return false;
    if (date.year.letter || date.year.significant > 0 || !at('-'))
        return true;
    ++at_;
    if (!month(date))
        return false;
    if (!at('-'))
        return true;
    if (date.isPartOfYear())
        return fail("the end of the date: a season or quarter has no days");
    ++at_;
    return day(date);
}

bool EdtfDateParser::year(EdtfYear& year)
{
    doubt(year, true);
    year.letter = take('Y');
    const std::size_t sign_at = at_;
    year.negative = take('-');
    if (year.letter ? !longYear(year)
                    : !masked(year, 4, "a year of four digits, X for one that is not read"))
        return false;
    if (year.negative && year.number == 0 && year.unread == 0)
        return failAt(sign_at, "a year other than -0000");
    if (at('S') && !significant(year))
        return false;
    doubt(year, false);
    return true;
}

bool EdtfDateParser::longYear(EdtfYear& year)
{
    const std::size_t begin = at_;
    int digits = 0;
    for (; isDigit(here()) && digits <= most_year_digits; ++at_, ++digits)
        year.number = digits < most_year_digits ? year.number * 10 + (here() - '0') : 0;
    if (digits == 0 || text_[begin] == '0')
        return failAt(begin, "a year after Y, from its first digit on");
    if (digits > most_year_digits)
        return failAt(begin, "a year of at most 18 digits");
    if (take('E') && !exponent(year))
        return false;
    if (digits + year.exponent > most_year_digits)
        return failAt(begin, "a year of at most 18 digits");
    return digits + year.exponent > 4 || failAt(begin, "a year of more than four digits after Y");
}

bool EdtfDateParser::exponent(EdtfYear& year)
{
    const std::size_t begin = at_;
    for (int i = 0; isDigit(here()) && i < 2 && !(i == 0 && at('0')); ++i, ++at_)
        year.exponent = year.exponent * 10 + (here() - '0');
    return year.exponent > 0 || failAt(begin, "a power of ten after E, from 1 on");
}

bool EdtfDateParser::significant(EdtfYear& year)
{
    ++at_;
    const std::size_t begin = at_;
    for (int i = 0; isDigit(here()) && i < 2 && !(i == 0 && at('0')); ++i, ++at_)
        year.significant = year.significant * 10 + (here() - '0');
    if (year.unread != 0)
        return failAt(begin - 1, "no S after a year with X");
    int digits = 4;
    if (year.letter) {
        digits = year.exponent;
        for (std::int64_t rest = year.number; rest > 0; rest /= 10)
            ++digits;
    }
    return (year.significant >= 1 && year.significant <= digits) ||
           failAt(begin, "how many of the year's digits count, after S");
}

bool EdtfDateParser::month(EdtfDate& date)
{
    const std::size_t begin = at_;
    constexpr const char* expected =
        "a month from 01 to 12, or 21 to 41 for a part of the year, of two digits";
    if (!part(date.month.emplace(), expected))
        return false;
    for (int number = 1; number <= 12; ++number)
        if (fitsDigits(*date.month, number))
            return true;
    return (date.isPartOfYear() && date.month->number <= 41) || failAt(begin, expected);
}

bool EdtfDateParser::day(EdtfDate& date)
{
    const std::size_t begin = at_;
    if (!part(date.day.emplace(), "a day of two digits, X for one that is not read"))
        return false;
    return firstDayOf(date) || failAt(begin, "a day that the month has");
}

bool EdtfDateParser::masked(EdtfDigits& digits, int length, const char* expected)
{
    for (int i = 0; i < length; ++i, ++at_) {
        const char c = here();
        if (!isDigit(c) && c != 'X')
            return fail(expected);
        digits.number = digits.number * 10 + (c == 'X' ? 0 : c - '0');
        digits.unread = digits.unread << 1U | (c == 'X' ? 1U : 0U);
    }
    return true;
}

bool EdtfDateParser::part(EdtfDigits& digits, const char* expected)
{
    doubt(digits, true);
    if (!masked(digits, 2, expected))
        return false;
    doubt(digits, false);
    return true;
}

void EdtfDateParser::doubt(EdtfDigits& digits, bool left)
{
    const auto sign = doubtSign(here());
    if (!sign || digits.doubt_left)
        return;
    digits.doubt = *sign;
    digits.doubt_left = left;
    ++at_;
}

bool EdtfDateParser::time(EdtfDate& date)
{
    const auto plain = [](const EdtfDigits& digits) {
        return digits.unread == 0 && digits.doubt == EdtfDoubt::None;
    };
    if (!date.day || !plain(date.year) || !plain(*date.month) || !plain(*date.day))
        return fail("the end of the date: a time needs a day without X and qualifiers");
    ++at_;
    EdtfTime& time = date.time.emplace();
    if (!twoDigits(time.hour, 23, "an hour from 00 to 23"))
        return false;
    if (!take(':'))
        return fail("':' and the minutes");
    if (!twoDigits(time.minute, 59, "minutes from 00 to 59"))
        return false;
    if (!take(':'))
        return fail("':' and the seconds");
    if (!twoDigits(time.second, time.minute == 59 ? 60 : 59, "seconds from 00 to 59"))
        return false;
    if (take('Z'))
        time.zone = EdtfTime::Zone::Utc;
    return time.zone == EdtfTime::Zone::Utc || !(at('+') || at('-')) || shift(time);
}

bool EdtfDateParser::shift(EdtfTime& time)
{
    const std::size_t begin = at_;
    time.west = at('-');
    ++at_;
    time.zone = EdtfTime::Zone::Hours;
    if (!twoDigits(time.shift_hours, 23, "the hours of the shift, from 00 to 23"))
        return false;
    if (take(':')) {
        time.zone = EdtfTime::Zone::HoursMinutes;
        if (!twoDigits(time.shift_minutes, 59, "the minutes of the shift, from 00 to 59"))
            return false;
    }
    return !time.west || time.shift_hours + time.shift_minutes > 0 ||
           failAt(begin, "'+' or Z where there is no shift");
}

bool EdtfDateParser::twoDigits(int& number, int most, const char* expected)
{
    const std::size_t begin = at_;
    for (int i = 0; i < 2; ++i, ++at_) {
        if (!isDigit(here()))
            return failAt(begin, expected);
        number = number * 10 + (here() - '0');
    }
    return number <= most || failAt(begin, expected);
}

}  // namespace models
