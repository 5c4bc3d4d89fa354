#pragma once

#include <string>

#include "models/reading.h"

namespace gui {

// Whether the person vouches for any cell.
bool hasConfirmed(const models::Reading& reading, const std::string& person);

// The reading as it is recorded and ranked: the person's clear cells hold one letter with full
// certainty, `reader` is the person; everything else is as shown.
models::Reading personsReading(const models::Reading& shown, const std::string& person);

}  // namespace gui
