#include "app/cli/typed_text.h"

#include <algorithm>

#include "app/cli/command_line.h"
#include "models/typed_notation.h"

namespace cli {

std::vector<models::Line> linesFromTyped(const std::string& typed)
{
    models::ParsedNotation parsed = models::parseTyped(typed);
    if (!parsed.fault)
        return std::move(parsed.lines);
    std::string shown = typed;
    std::replace(shown.begin(), shown.end(), '\n', ' ');
    throw UsageError("the reading is not in the notation. " + parsed.fault->message() + "\n  " +
                     shown + "\n  " + std::string(parsed.fault->position, ' ') + "^");
}

}  // namespace cli
