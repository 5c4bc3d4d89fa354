#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "models/reading.h"

namespace models {

// Why a typed reading could not be understood, fit to be shown under the text.
struct NotationFault {
    std::size_t position = 0;  // 0-based, in user-perceived characters from the start of the text
    std::string expected;      // what should stand there: "a dot, a number, or '- - -'"

    // "At character 5: expected a closing bracket."
    std::string message() const;
};

struct ParsedNotation {
    std::vector<Line> lines;  // what was understood before the fault; everything when there is none
    std::optional<NotationFault> fault;
};

// Reads the typed notation (see DEVELOPERS.md for the table of signs). Cells have no extents and no
// `by`. Empty text gives no lines and no fault. Never throws on foreign text; text that is not
// UTF-8 is a fault at its first bad byte.
ParsedNotation parseTyped(const std::string& text);

// Writes one line, or lines joined by " / ", so that parseTyped gives the same states, alternatives
// (their order; certainties are not written), counts and line ends back. A line's extents, boxes,
// roles, `by` and certainties are not part of the notation. Letters are put in one normalised form.
std::string writeTyped(const Line& line);
std::string writeTyped(const std::vector<Line>& lines);

}  // namespace models
