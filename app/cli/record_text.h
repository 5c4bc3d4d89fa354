#pragma once

#include <ostream>

#include "models/archive/records.h"

namespace cli {

// A filed record for a person to read: empty fields left out, corrected readings and replaced
// attributions marked as such.
void printRecord(std::ostream& out, const models::ItemRecord& item);

}  // namespace cli
