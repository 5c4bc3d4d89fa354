#include <catch2/catch.hpp>
#include <random>

#include "models/exchange/tei.h"
#include "tests/exchange/random_tei.h"
#include "tests/support/tei_schema.h"

TEST_CASE("Whole documents are valid by the EpiDoc schema", "[exchange][tei][schema]")
{
    if (const std::string why = support::whyNoTeiSchema(); !why.empty()) {
        WARN("skipped: Whole documents are valid by the EpiDoc schema, since " << why);
        return;
    }
    const support::TemporaryFolder sound, faulty;
    std::mt19937 random(1940);
    for (int round = 0; round < 300; ++round)
        sound.write("document" + std::to_string(round) + ".xml",
                    models::writeTeiDocument(madeUpDocument(randomReading(random))));
    CHECK(support::complaintsOfTei(sound) == "");

    faulty.write("faulty.xml",
                 "<TEI xmlns=\"http://www.tei-c.org/ns/1.0\"><gap quantity=\"3\"/></TEI>");
    CHECK(support::complaintsOfTei(faulty) != "");
}
