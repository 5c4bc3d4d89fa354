#pragma once

#include <QString>
#include <vector>

#include "models/reading.h"

// What the parts of a line are for. Spans in a line are the person's word; where a line has none,
// what is guessed of it is shown, with a question mark.
namespace gui {

// "maker", "date", ...; "not said" for Unknown.
QString roleWord(models::LineRole role);

// A part of a line as it is shown.
struct ShownRole {
    std::size_t first_cell = 0, end_cell = 0;
    models::LineRole role = models::LineRole::Unknown;
    bool guessed = false;

    bool operator==(const ShownRole&) const = default;
};

// The person's parts; where they have not said what one is for, and for a line without any, the
// likeliest role of each guessed stretch.
//   guessed  as models::guessRoles gives it for these lines; may be shorter
std::vector<std::vector<ShownRole>> shownRoles(
    const std::vector<models::Line>& lines,
    const std::vector<std::vector<models::RoleSpan>>& guessed);

// A part begins at this cell (greater than 0), or, where one does, no longer does.
void partLineAt(models::Line& line, std::size_t cell);

// Says what the part that holds the cell is for; a line without parts is one part.
void setRoleAt(models::Line& line, std::size_t cell, models::LineRole role);

}  // namespace gui
