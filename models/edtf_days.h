#pragma once

#include <compare>
#include <cstdint>
#include <optional>

#include "models/edtf.h"

namespace models {

// A day of the Gregorian calendar, also before it was introduced; the year before 1 is 0.
struct CalendarDay {
    std::int64_t year = 0;
    int month = 1, day = 1;

    auto operator<=>(const CalendarDay&) const = default;
};

// Days of a month; February by the leap years of the Gregorian calendar. Months are 1 to 12.
int daysOfMonth(std::int64_t year, int month);

bool exists(const CalendarDay& day);

// The side of a span of days.
struct EdtfLimit {
    EdtfEnd::Kind kind{};
    CalendarDay day;  // only where `kind` is Date

    bool operator==(const EdtfLimit&) const = default;
};

struct EdtfDays {
    EdtfLimit first, last;

    bool operator==(const EdtfDays&) const = default;
};

// First and last day that a value allows: every calendar day counts that fits the digits, of sets
// and intervals their hull; qualifiers move nothing, a time belongs to the day it is written with.
// The format gives no days for seasons; here, by the calendar of weather services, spring of the
// north is March to May and winter is December and the two months after it.
EdtfDays daysOf(const Edtf& edtf);

// Of a single date; nullopt when no day fits its digits, as in 1940-02-3X.
std::optional<CalendarDay> firstDayOf(const EdtfDate& date);
std::optional<CalendarDay> lastDayOf(const EdtfDate& date);

// Could the date be this day? Unlike the bounds this looks at every digit: 19X0 is never 1941. An
// unknown end of an interval could be anywhere beyond the other one; doubt shuts nothing out.
bool couldBe(const Edtf& edtf, const CalendarDay& day);
bool couldBe(const EdtfDate& date, const CalendarDay& day);

// Could it be some day of this year?
bool couldBeIn(const Edtf& edtf, std::int64_t year);

// How the years of a date are counted through. A year with S or Y, without unread digits, is a
// span; one with unread digits is a list, from the earliest year on.
std::int64_t firstYearOf(const EdtfYear& year);
std::int64_t lastYearOf(const EdtfYear& year);
bool fitsYear(const EdtfYear& written, std::int64_t year);
int numberOfYears(const EdtfYear& masked);
std::int64_t yearAt(const EdtfYear& masked, int index);

bool fitsDigits(const EdtfDigits& written, int number);

// First and last day of a part of a year (21 to 41); a winter of the north ends in the next year.
CalendarDay firstDayOfPart(std::int64_t year, int part);
CalendarDay lastDayOfPart(std::int64_t year, int part);

}  // namespace models
