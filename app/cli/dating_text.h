#pragma once

#include <ostream>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "models/item_dating.h"

// What an item's evidence gives, for a person and for other programs.
namespace cli {

// The item first, then each part that is dated on its own: the years, a histogram, what every piece
// of evidence did, and what contradicts what.
void printDatings(std::ostream& out, const std::vector<models::PartDating>& parts);

// {"parts": [{"name", "is_item", "edtf", "in_words", "set": [1940, ...], "years": [[1940, 0.9],
// ...], "evidence": [{"source", "meaning", "bits", "moved", "sound", "in_words"}],
// "contradiction", "is_contradiction", "culprits": [{"source", "probability", "fault", "printed",
// "in_words"}], "silent": [...]}]}; `edtf` and `printed` are null where there is none; years below
// 0.001 are left out of `years`.
nlohmann::ordered_json datingsJson(const std::vector<models::PartDating>& parts);

}  // namespace cli
