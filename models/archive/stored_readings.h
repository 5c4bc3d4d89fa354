#pragma once

#include <string>
#include <vector>

#include "models/archive/database.h"
#include "models/archive/records.h"

namespace models {

// A reading with the view it is of; no view for a reading of the object itself.
struct StoredReading {
    std::string view_id;
    ReadingRecord record;
};

// All readings of a stamp, in the order of recording.
std::vector<StoredReading> loadReadings(const sql::Database& database, const std::string& stamp_id);

// The lines of one row of `reading`.
std::vector<Line> storedLines(const sql::Database& database, const sql::Row& reading);

}  // namespace models
