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
// UTF-8 is a fault at its first bad byte. A clear cell gets certainty 1, `A?` 0.6, and the letters
// of `(0|6|8)` share 0.9, each 0.6 of the one before it.
//
// Beside the everyday signs there are these, which a reading needs to come back whole:
//   [3..]                 three lost or more
//   [+3] [+3..5] [+3..]   traces of three, three to five, three or more characters as one cell
//   [+~5]                 traces of about five characters
//   +{guess 0|6}          traces, or a lost cell, with what it may have been
//   A{erased} A{over} A{earlier}   taken out; set over another character; read earlier, gone now
//   {cut}                 at a line's end: cut off there, no gap counted
//   {open}                at a line's end: nothing known of this end, though a gap stands there
// A line's `[- - -]` at its end is a lost cell of unknown number and makes the end CutOff. One
// newline at the very end of the text is let pass.
ParsedNotation parseTyped(const std::string& text);

// Writes one line, or lines joined by " / ", so that parseTyped gives the same states, alternatives
// (their order; certainties are not written; of a clear cell only the first), counts, marks of
// erasure and line ends back. A line's extents, boxes, roles, `by` and certainties are not part of
// the notation, nor that a count was estimated where its spread is not that of [~5]. Letters are
// put in one normalised form. A cell that breaks the rules of reading.h by having no letter prints
// as traces.
std::string writeTyped(const Line& line);
std::string writeTyped(const std::vector<Line>& lines);

}  // namespace models
