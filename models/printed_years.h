#pragma once

#include <cstddef>
#include <vector>

#include "models/reading.h"
#include "models/year_weights.h"

namespace models {

// What the years printed on a line say of the year made: mostly the same, seldom a little later or
// earlier. Where a word leads the date to another role, boundOf tells the direction: of an
// inspection often later, of a contract or a pattern mostly earlier, of a lot, a size or an owner
// nothing at all. Shares: common practice, no source.
class PrintedYears {
public:
    PrintedYears(const Line& line, const YearRange& range);

    // P(seen | made in a year), by year, from P(seen | printed year), by year, of the date that
    // ends before this cell.
    std::vector<double> asMade(const std::vector<double>& odds, std::size_t end_cell) const;

private:
    std::vector<RoleSpan> roles_;  // empty where no word leads any, which is most often so
};

}  // namespace models
