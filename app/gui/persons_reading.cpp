#include "app/gui/persons_reading.h"

#include <algorithm>

namespace gui {

using models::Cell;
using models::Line;

bool hasConfirmed(const models::Reading& reading, const std::string& person)
{
    const auto confirmed = [&](const Cell& cell) { return cell.by == person; };
    return std::any_of(reading.lines.begin(), reading.lines.end(), [&](const Line& line) {
        return std::any_of(line.cells.begin(), line.cells.end(), confirmed);
    });
}

models::Reading personsReading(const models::Reading& shown, const std::string& person)
{
    models::Reading reading = shown;
    reading.reader = person;
    for (Line& line : reading.lines)
        for (Cell& cell : line.cells)
            if (cell.by == person && cell.state == models::CellState::Clear &&
                !cell.alternatives.empty())
                cell.alternatives = {{cell.alternatives.front().text, 1.0}};
    std::erase_if(reading.lines, [](const Line& line) { return line.cells.empty(); });
    return reading;
}

}  // namespace gui
