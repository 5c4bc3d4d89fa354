#include "app/cli/typed_text.h"

#include <algorithm>

#include "app/cli/command_line.h"
#include "models/typed_notation.h"

namespace cli {

namespace {

bool isBlank(const models::Line& line)
{
    return std::all_of(line.cells.begin(), line.cells.end(), [](const models::Cell& cell) {
        return !cell.alternatives.empty() && cell.alternatives.front().text == " ";
    });
}

}  // namespace

std::vector<models::Line> linesFromTyped(const std::string& typed)
{
    models::ParsedNotation parsed = models::parseTyped(typed);
    if (!parsed.fault) {
        std::erase_if(parsed.lines, isBlank);
        return std::move(parsed.lines);
    }
    std::string shown = typed;
    std::replace(shown.begin(), shown.end(), '\n', ' ');
    throw UsageError("the reading is not in the notation. " + parsed.fault->message() + "\n  " +
                     shown + "\n  " + std::string(parsed.fault->position, ' ') + "^");
}

}  // namespace cli
