#pragma once

#include <string>

#include "models/reading.h"

// What may stand between square brackets for an unread stretch; shared by the two directions of
// the typed notation, so that restored text that looks like a stretch is escaped.
namespace models {

struct GapForm {
    bool is_gap = false;
    Cell cell;          // when it is one
    std::string fault;  // what was expected, when it begins like one but is none
};

// `content` is the text between the brackets, without escapes.
GapForm readGap(const std::string& content);

// A stretch of about so many characters: a fifth more or fewer, one at least.
Cell aboutCell(CellState state, int about);

// A lost stretch of unknown number, or of nothing at all: at a line's end the line is cut off
// there.
bool isOpenGap(const Cell& cell);

// The number for which aboutCell makes the cell's counts; 0 when the cell is not of about a number.
int aboutNumber(const Cell& cell);

// The brackets and what stands in them, for a Lost or Traces cell.
std::string writeGap(const Cell& cell);

}  // namespace models
