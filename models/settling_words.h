#pragma once

#include <string>
#include <vector>

#include "models/candidates.h"

namespace models {

// What a person is told of the cell that would settle most.
struct SettlingWords {
    std::string where;                  // "look again at the 3rd character of T.[.]. & CO first"
    std::vector<std::string> meanings;  // "H (62 %) would speak for Tobias Harskell & Co (91 %)"
};

SettlingWords settlingInWords(const SettlingCell& cell);

}  // namespace models
