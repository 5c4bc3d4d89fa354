#pragma once

#include <string>

#include "models/archive/records.h"

namespace models {

// What was read on an item, as one EpiDoc TEI document; several readings as a corpus of one
// document each. A reading that another one corrects is left out. The item's owner is told as the
// repository, its accession number (else its id) as the number there.
//   returns  an empty text when nothing was read
// Throws std::invalid_argument if a reading cannot be written (see writeTei).
std::string itemTei(const ItemRecord& item);

}  // namespace models
