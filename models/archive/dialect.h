#pragma once

#include <cstdint>
#include <string>
#include <vector>

// Everything that differs from one database to another stands behind this header; all other SQL of
// the archive is plain. The one implementation is dialect_sqlite.cpp.
namespace models::sql {

// What kind of trouble a database reported.
enum class Trouble {
    Locked,       // another program holds it
    Damaged,      // its pages or rows do not hold together
    NotDatabase,  // it is something else
    Full,         // no room
    ReadOnly,     // it may not be written
    CannotOpen,
    Duplicate,  // a value that must be unique is there already
    Missing,    // a reference to a row that is not there
    Other
};

const char* driverName();
std::string connectOptions();

// Trouble of the database's own error code, with its message as a second witness.
Trouble troubleOf(const std::string& native_code, const std::string& message);

// Run once on every new connection, in this order.
std::vector<std::string> connectionSettings();

// Starts a transaction that alone may write, or one that reads one state of everything.
std::string beginWriting();
std::string beginReading();

// Answers one row "ok" when the whole file holds together.
std::string integrityCheck();

// One row per table and index, with the SQL that made it, in a settled order.
std::string schemaListing();

// The version that the file itself carries, and who wrote it; both 0 in a new file.
std::string readFileVersion();
std::string readFileOwner();
std::vector<std::string> writeFileVersion(int version);
std::int64_t fileOwner();

}  // namespace models::sql
