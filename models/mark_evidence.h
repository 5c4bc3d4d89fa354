#pragma once

#include <vector>

#include "models/dating.h"
#include "models/roles.h"

namespace models {

// One stamp as it was read.
struct StampSeen {
    std::string name;  // "stamp 1"
    std::vector<Line> lines;
    bool later_added = false;  // somebody said that it looks later added
};

// What the dates of one stamp say of when the thing that it sits on was made, a piece for each
// place of a line that can be a date. The sound case takes the digits that were read, in the role
// that is likeliest for them (boundOf tells what a role bounds); beside it stand a misread digit,
// as often as the cells and the confusions of letters say, a mark put on after the making, one with
// an earlier year, and the other roles that the figures may have.
//   context  its years are replaced by the range
std::vector<DateEvidence> markEvidence(const StampSeen& stamp, const RoleContext& context,
                                       const YearRange& range);

// The stamp's lines without the places that are likely dates: what is left can name a maker.
std::vector<Line> linesWithoutDates(const std::vector<Line>& lines, const RoleContext& context,
                                    const YearRange& range);

}  // namespace models
