#include <catch2/catch.hpp>
#include <limits>
#include <random>

#include "models/exchange/tei.h"
#include "tests/exchange/random_tei.h"

namespace {

models::TeiText oneCell(models::Cell cell)
{
    models::TeiText text;
    text.reading.lines.resize(1);
    text.reading.lines.front().cells = {std::move(cell)};
    return text;
}

}  // namespace

TEST_CASE("A reading written as TEI and read again is the same reading", "[exchange][tei]")
{
    std::mt19937 random(1938);
    for (int round = 0; round < 20000; ++round) {
        models::TeiText text;
        text.reading.lines = randomReading(random).lines;
        const std::string xml = models::writeTei(text);
        CAPTURE(round, xml);
        const models::TeiText again = models::parseTei(xml);
        REQUIRE(again.reading == text.reading);
        REQUIRE(models::writeTei(again) == xml);
    }
}

TEST_CASE("A document keeps the whole reading, title, place and number", "[exchange][tei]")
{
    std::mt19937 random(1939);
    for (int round = 0; round < 3000; ++round) {
        const models::TeiDocument document = madeUpDocument(randomReading(random));
        const std::string xml = models::writeTeiDocument(document);
        CAPTURE(round, xml);
        const models::TeiDocument again = models::parseTeiDocument(xml);
        REQUIRE(again.text.reading == document.text.reading);
        REQUIRE(again.title == document.title);
        REQUIRE(again.repository == document.repository);
        REQUIRE(again.idno == document.idno);
        REQUIRE(models::writeTeiDocument(again) == xml);
    }
}

TEST_CASE("Marks of an editor survive in a document and around lines", "[exchange][tei]")
{
    // Made for this test after the same pages of the Guidelines as the table of fragments.
    for (const char* xml :
         {"<lb n=\"1\"/><orgName>T.V.<unclear>C</unclear>o</orgName><lb n=\"2\"/>"
          "<date notBefore=\"1940\" notAfter=\"1949\">194<gap reason=\"lost\" quantity=\"1\" "
          "unit=\"character\"/></date>",
          "<orgName><lb n=\"1\"/>T<lb n=\"2\"/>V</orgName>",
          "<damage><supplied reason=\"lost\" evidence=\"parallel\">A</supplied></damage>",
          "A<supplied reason=\"omitted\">B</supplied><num value=\"3\"/>"}) {
        CAPTURE(xml);
        models::TeiDocument document;
        document.text = models::parseTei(xml);
        CHECK(models::writeTei(document.text) == xml);
        const models::TeiDocument again =
            models::parseTeiDocument(models::writeTeiDocument(document));
        CHECK(again == document);
    }
}

TEST_CASE("A line break in the source is a space between letters and none at a line's edge",
          "[exchange][tei]")
{
    const models::TeiText text = models::parseTei("\n  <lb n=\"1\"/>AB\n   CD\n  <lb n=\"2\"/>E\n");
    REQUIRE(text.reading.lines.size() == 2);
    CHECK(models::plainText(text.reading.lines[0]) == "AB CD");
    CHECK(models::plainText(text.reading.lines[1]) == "E");
}

TEST_CASE("What a reading may not hold is not written", "[exchange][tei]")
{
    const double none = std::numeric_limits<double>::quiet_NaN();
    std::vector<models::Cell> cells(7, models::clearCell("A"));
    cells[0].least = 2;
    cells[1].doubted = true;
    cells[2].left_px = none;
    cells[3].alternatives.front().certainty = 1.5;
    cells[4].alternatives.front().text = "\x01";
    cells[5].alternatives.front().text = "\xFF";
    cells[6].alternatives.front().certainty = none;
    for (const models::Cell& cell : cells) {
        CHECK_THROWS_AS(models::writeTei(oneCell(cell)), std::invalid_argument);
        CHECK_THROWS_WITH(models::writeTei(oneCell(cell)), Catch::StartsWith("line 1: cell 1: "));
    }

    models::TeiText text = oneCell(models::clearCell("A"));
    text.marks = {{.element = "hi", .attributes = {}, .text = "", .first = 1, .end = 3}};
    CHECK_THROWS_AS(models::writeTei(text), std::invalid_argument);
    text.marks = {
        {.element = "hi", .attributes = {}, .text = "", .first = 1, .end = 2, .depth = 1}};
    CHECK_THROWS_AS(models::writeTei(text), std::invalid_argument);
    text.marks = {{.element = "gap", .attributes = {}, .text = "", .first = 1, .end = 2}};
    CHECK_THROWS_AS(models::writeTei(text), std::invalid_argument);
}
