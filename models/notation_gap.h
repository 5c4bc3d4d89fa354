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

// The brackets and what stands in them, for a Lost or Traces cell.
std::string writeGap(const Cell& cell);

}  // namespace models
