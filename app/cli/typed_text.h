#pragma once

#include <string>
#include <vector>

#include "models/reading.h"

namespace cli {

// The lines of a typed reading. Throws UsageError for a fault of notation: the sentence, the text
// and a caret under the place.
std::vector<models::Line> linesFromTyped(const std::string& typed);

}  // namespace cli
