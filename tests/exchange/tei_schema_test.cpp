#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <random>

#include "models/exchange/tei.h"
#include "tests/exchange/random_tei.h"
#include "tests/support/temporary_folder.h"

namespace {

// The EpiDoc schema is not part of the project (it is under the GPL): it is looked for where the
// variable says, or in a folder beside the source tree.
std::filesystem::path schemaFile()
{
    if (const char* named = std::getenv("WEFTMARK_TEI_SCHEMA"))
        return named;
    return std::filesystem::path(WEFTMARK_SOURCE_DIR) / "../shared/schemas/tei-epidoc-9.8.rng";
}

bool jingIsThere()
{
    return std::system("command -v jing > /dev/null 2>&1") == 0;
}

// What jing complains of, all files at once; empty when it has nothing.
std::string complaintsAbout(const support::TemporaryFolder& folder)
{
    const std::string place = folder.path().string();
    const std::string command = "jing '" + schemaFile().string() + "' '" + place + "'/*.xml > '" +
                                place + "/complaints' 2> /dev/null";
    const bool valid = std::system(command.c_str()) == 0;
    const std::string complaints = support::bytesOf(folder.path() / "complaints");
    return valid ? "" : complaints + "jing refused";
}

}  // namespace

TEST_CASE("Whole documents are valid by the EpiDoc schema", "[exchange][tei][schema]")
{
    if (!std::filesystem::exists(schemaFile()) || !jingIsThere()) {
        WARN("skipped: Whole documents are valid by the EpiDoc schema, since the schema ("
             << schemaFile() << ") or jing is not there");
        return;
    }
    const support::TemporaryFolder sound, faulty;
    std::mt19937 random(1940);
    for (int round = 0; round < 300; ++round) {
        models::TeiDocument document;
        document.title = "Strap & buckle";
        document.repository = "Made-up archive";
        document.idno = "0001";
        document.text.reading = randomReading(random);
        sound.write("document" + std::to_string(round) + ".xml",
                    models::writeTeiDocument(document));
    }
    CHECK(complaintsAbout(sound) == "");

    faulty.write("faulty.xml",
                 "<TEI xmlns=\"http://www.tei-c.org/ns/1.0\"><gap quantity=\"3\"/></TEI>");
    CHECK(complaintsAbout(faulty) != "");
}
