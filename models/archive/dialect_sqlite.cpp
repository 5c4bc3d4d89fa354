#include <stdexcept>

#include "models/archive/dialect.h"

namespace models::sql {

namespace {

// Result codes of SQLite, from the published list (sqlite.org, "Result and Error Codes").
constexpr int busy = 5, locked = 6, read_only = 8, io_error = 10, corrupt = 11, full = 13,
              cannot_open = 14, constraint = 19, not_a_database = 26;

int primaryCode(const std::string& native_code)
{
    try {
        return std::stoi(native_code) & 0xff;
    } catch (const std::logic_error&) {
        return 0;
    }
}

}  // namespace

const char* driverName()
{
    return "QSQLITE";
}

std::string connectOptions()
{
    return "QSQLITE_BUSY_TIMEOUT=5000";
}

Trouble troubleOf(const std::string& native_code, const std::string& message)
{
    switch (primaryCode(native_code)) {
        case busy:
        case locked:
            return Trouble::Locked;
        case read_only:
            return Trouble::ReadOnly;
        case corrupt:
            return Trouble::Damaged;
        case full:
        case io_error:
            return Trouble::Full;
        case cannot_open:
            return Trouble::CannotOpen;
        case not_a_database:
            return Trouble::NotDatabase;
        case constraint:
            return message.find("FOREIGN KEY") != std::string::npos ? Trouble::Missing
                                                                    : Trouble::Duplicate;
        default:
            return Trouble::Other;
    }
}

std::vector<std::string> connectionSettings()
{
    // A rollback journal rather than a write-ahead log: the archive is one file that can be copied,
    // and works on a network drive. `cell_size_check` makes damaged pages show early.
    return {"PRAGMA foreign_keys = ON", "PRAGMA synchronous = FULL", "PRAGMA cell_size_check = ON",
            "PRAGMA trusted_schema = OFF"};
}

std::string beginWriting()
{
    return "BEGIN IMMEDIATE";
}

std::string beginReading()
{
    return "BEGIN";
}

std::string integrityCheck()
{
    return "PRAGMA integrity_check(1)";
}

std::string schemaListing()
{
    return "SELECT type, name, tbl_name, sql FROM sqlite_master ORDER BY type, name";
}

std::string readFileVersion()
{
    return "PRAGMA user_version";
}

std::string readFileOwner()
{
    return "PRAGMA application_id";
}

std::int64_t fileOwner()
{
    return 0x5745'4654;  // "WEFT"
}

std::vector<std::string> writeFileVersion(int version)
{
    return {"PRAGMA application_id = " + std::to_string(fileOwner()),
            "PRAGMA user_version = " + std::to_string(version)};
}

}  // namespace models::sql
