#include <catch2/catch.hpp>

#include "models/exchange/tei.h"
#include "tests/app/command_runner.h"
#include "tests/support/tei_schema.h"

using Catch::Contains;
using support::CommandRunner;
using support::Ran;

TEST_CASE("Show writes what was read as TEI", "[app][show][tei]")
{
    CommandRunner runner;
    REQUIRE(runner.run({"add", "--accession", "1", "--reading", "W. POL[...] / 19(4|6)1?"}).code ==
            0);
    const Ran ran = runner.run({"show", "1", "--tei"});
    CHECK(ran.code == 0);
    CHECK(ran.err == "");
    const models::TeiDocument document = models::parseTeiDocument(ran.out);
    CHECK(document.idno == "1");
    CHECK(document.text.reading == runner.archive().item("1")->stamps.at(0).readings.at(0).reading);
    CHECK(runner.run({"show", "1", "--tei", "--json"}).code == 2);
}

TEST_CASE("Show tells when there is nothing to write as TEI", "[app][show][tei]")
{
    CommandRunner runner;
    models::ItemRecord empty;
    empty.accession_number = "2";
    runner.archive().addItem(empty);
    const Ran ran = runner.run({"show", "2", "--tei"});
    CHECK(ran.code == 1);
    CHECK(ran.out == "");
    CHECK_THAT(ran.err, Contains("nothing was read"));
}

TEST_CASE("What show writes as TEI is valid by the EpiDoc schema", "[app][show][tei][schema]")
{
    if (const std::string why = support::whyNoTeiSchema(); !why.empty()) {
        WARN("skipped: What show writes as TEI is valid by the EpiDoc schema, since " << why);
        return;
    }
    CommandRunner runner;
    const std::string one = "T.H. & CO? / [- - -] {arrow} 19[~2]";
    REQUIRE(runner.run({"add", "--accession", "one", "--reading", one}).code == 0);
    REQUIRE(runner
                .run({"add", "--accession", "two & <more>", "--reading", one, "--reading",
                      "193{erased}8{erased}4{over}0{over}", "--reading", "+{guess 0|6}"})
                .code == 0);
    const support::TemporaryFolder documents;
    documents.write("one.xml", runner.run({"show", "one", "--tei"}).out);
    documents.write("two.xml", runner.run({"show", "two & <more>", "--tei"}).out);
    CHECK(support::complaintsOfTei(documents) == "");
}
