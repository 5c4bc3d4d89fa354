#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "models/maker_register.h"
#include "models/reading.h"

namespace models {

// How a day and a month are printed where both are in figures.
enum class DayOrder { Unknown, DayFirst, MonthFirst };

// What is known of an item before its date is read.
struct DateContext {
    int earliest_year = 1801;  // years in which such an item can have been made, inclusive; the
    int latest_year = 2000;    //   default, where nothing is known: the 19th and 20th century
    DayOrder day_order = DayOrder::Unknown;
    std::vector<Code> codes = {};  // of the register; those of years and quarters are read
};

// One thing a stretch of a line can mean as a date.
struct DateMeaning {
    std::string printed;     // as it stands, in the typed notation
    std::string edtf;        // "1940-03", "194X", "[1940,1946]", "{1938,1940}"
    std::vector<int> years;  // every year it can be, ascending, within the context
    double probability = 0;  // 0 to 1, that this stretch is a date with this meaning; the
                             //   meanings of one stretch sum to at most 1
    std::size_t first_cell = 0, end_cell = 0;  // cells first_cell <= i < end_cell of the line
};

// Finds dates in a line: years in four digits and in two (with or without an apostrophe), month and
// year (3/40, 3.1940, MAR 1940, III 40), day, month and year (12.3.40, 12 MAR 1940), with doubtful
// and unread digits in any place, letters read for digits (O for 0, I for 1) allowed where the rest
// is digits. A two-digit year takes the centuries that the context allows. A number before the year
// may also be a quarter (3/40 as 1940-35), a meaning of its own; a day and a month in figures whose
// order is open give both as a set; an order that is known gives way where only the other one is a
// day. At least one digit of the year must have been read. A word that is a year's code in the
// context's register is that year. A date struck over an erased one is a correction or a second
// date: itself alone, or both ({1938,1940}).
//   returns  meanings, likeliest first, those below 0.02 left out; empty when nothing looks like a
//            date
// Throws std::invalid_argument if the context's years are not in order or not within 0 to 9999.
std::vector<DateMeaning> readDates(const Line& line, const DateContext& context = {});

}  // namespace models
