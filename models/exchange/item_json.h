#pragma once

#include <nlohmann/json_fwd.hpp>

#include "models/archive/records.h"

namespace models {

// A record whole: every field of records.h under its own name, outlines as four [x, y], readings as
// readingJson writes them, lengths that were not measured null. Photos are named by their hash and
// original name; where they lie on this computer is left out.
// Throws std::invalid_argument if a number of a reading is not finite.
nlohmann::ordered_json itemJson(const ItemRecord& item);

}  // namespace models
