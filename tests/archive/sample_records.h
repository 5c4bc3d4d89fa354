#pragma once

#include <string>

#include "models/archive/records.h"
#include "tests/support/temporary_folder.h"

// Records of the made-up scenario.
namespace support {

// A reading of two lines that uses every state, flag and field a reading has.
models::Reading fullReading();

// A person's reading in the typed notation.
models::Reading typedReading(const std::string& person, const std::string& typed);

// An item with two photos (written to the folder), two stamps, three views and one of everything
// else. The texts are not all ASCII.
models::ItemRecord fullItem(const TemporaryFolder& folder);

// An item with one stamp of which a person read this; no photos.
models::ItemRecord itemReading(const std::string& typed);

// The record without what an archive fills in: ids, authors, times, and where photos lie.
models::ItemRecord withoutFilledIn(models::ItemRecord item);

}  // namespace support
