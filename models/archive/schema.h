#pragma once

#include <string>

#include "models/archive/database.h"

namespace models::sql {

// The version of the schema that this program writes.
constexpr int schema_version = 2;

// Brings an open archive to schema_version: makes the tables of a new one, steps an older one up,
// checks one of this version. All in one transaction.
//   now  UTC, recorded with each step
// Throws ArchiveError if the file is damaged, is not an archive, or was written by a newer version;
// then nothing is changed.
void prepareSchema(Database& database, const std::string& now);

}  // namespace models::sql
