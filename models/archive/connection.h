#pragma once

#include "models/archive/archive.h"
#include "models/archive/database.h"
#include "models/archive/entry.h"

namespace models {

// What an open archive keeps.
struct Archive::Connection {
    Connection(const std::filesystem::path& archive_folder, std::string by, Clock tells_time);

    Entry entry() { return {database, folder, author, clock()}; }

    std::filesystem::path folder;
    std::string author;
    Clock clock;
    sql::Database database;
};

}  // namespace models
