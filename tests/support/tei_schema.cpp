#include "tests/support/tei_schema.h"

#include <cstdlib>
#include <filesystem>

namespace support {

namespace {

std::filesystem::path schemaFile()
{
    if (const char* named = std::getenv("WEFTMARK_TEI_SCHEMA"))
        return named;
    return std::filesystem::path(WEFTMARK_SOURCE_DIR) / "../shared/schemas/tei-epidoc-9.8.rng";
}

}  // namespace

std::string whyNoTeiSchema()
{
    if (!std::filesystem::exists(schemaFile()))
        return "the schema " + schemaFile().string() + " is not there";
    if (std::system("command -v jing > /dev/null 2>&1") != 0)
        return "jing is not there";
    return {};
}

std::string complaintsOfTei(const TemporaryFolder& folder)
{
    const std::string place = folder.path().string();
    const std::string command = "jing '" + schemaFile().string() + "' '" + place + "'/*.xml > '" +
                                place + "/complaints' 2> /dev/null";
    const bool valid = std::system(command.c_str()) == 0;
    const std::string complaints = bytesOf(folder.path() / "complaints");
    return valid ? "" : complaints + "jing refused";
}

}  // namespace support
