#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "models/date_forms.h"
#include "models/date_glyphs.h"

// How months and quarters are printed.
namespace models {

// The months of one form whose names are of one length and fit a stretch of glyphs.
struct MonthsThere {
    MonthForm form = MonthForm::Name;
    std::size_t length = 0;         // of the names, in characters
    std::array<double, 13> odds{};  // P(seen | name) / P(seen | other text), by month or quarter
};

// What was read so far with a month of one or two figures behind it. In 4/25/40 the second figure
// can only be the day, so the first is the month.
DateInstance withMonthInFigures(DateInstance so_far, const std::vector<DateGlyph>& glyphs,
                                std::size_t at, std::size_t digits);

// What can begin at a glyph: English names and short forms (MCH and JLY are seen on postmarks),
// Roman numbers as postmarks and coins print them (with IIII and VIIII as a form of their own),
// quarters by the register's codes. Months that the letters leave open, as far as they were read,
// come together; one that takes a letter to be misread comes alone.
std::vector<MonthsThere> monthsNamedAt(const DateLine& line, const std::vector<DateGlyph>& glyphs,
                                       std::size_t at, const std::vector<QuarterName>& quarters);

}  // namespace models
