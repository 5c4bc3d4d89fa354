#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "models/date_glyphs.h"

// Every way in which a stretch of a line can be a date, with how well it fits each year.
namespace models {

enum class MonthForm { None, Numeric, Name, Roman, LongRoman, Quarter };

// How a quarter is marked where the register lists codes for it: Q1.
struct QuarterName {
    std::string text;
    int quarter = 1;  // 1 to 4
};

// A stretch read as a date of one form. Glyph numbers refer to `glyphs`.
struct DateInstance {
    std::vector<DateGlyph> glyphs;             // of the stretch alone
    std::size_t first_cell = 0, end_cell = 0;  // cells first_cell <= i < end_cell
    TextLayer layer = TextLayer::Later;
    MonthForm month_form = MonthForm::None;
    std::size_t year_glyph = 0, year_digits = 4;    // first glyph of the year; 2 or 4 digits
    std::size_t month_glyph = 0, month_digits = 0;  // digits of a month or quarter in figures
    std::size_t day_glyph = 0, day_digits = 0;      // 0 when no day is printed
    std::array<double, 13> month_odds{};            // by month 1 to 12 (quarter 1 to 4)
    double base_odds = 1;  // of all that no year decides, with the form's own prior

    // P(seen | a date of this form and year) / P(seen | other text).
    double odds(int year) const;
};

// The instances of all forms on a line; those that fit no better than other text are left out.
// Where letters were struck over others, either text can be the date of the making: each has half
// the odds.
std::vector<DateInstance> findDates(const Line& line,
                                    const std::vector<QuarterName>& quarters = {});

}  // namespace models
