#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/command_runner.h"

using Catch::Contains;
using support::CommandRunner;
using support::Ran;

namespace {

void fileTwo(CommandRunner& runner)
{
    REQUIRE(runner
                .run({"add", "--reading", "W. POLGLASE / 1941", "--accession", "1", "--notes",
                      "=1+1, \"quoted\""})
                .code == 0);
    REQUIRE(runner.run({"add", "--reading", "[...]", "--accession", "2"}).code == 0);
}

}  // namespace

TEST_CASE("Export writes all records, oldest first", "[app][export]")
{
    CommandRunner runner;
    fileTwo(runner);
    const Ran csv = runner.run({"export", "--format", "csv"});
    CHECK(csv.code == 0);
    REQUIRE(csv.outLines().size() == 3);
    CHECK_THAT(csv.outLines()[1], Contains("Ines Körber: W. POLGLASE / 1941") &&
                                      Contains("\"'=1+1, \"\"quoted\"\"\""));

    const nlohmann::json json =
        nlohmann::json::parse(runner.run({"export", "--format", "json"}).out);
    REQUIRE(json.at("items").size() == 2);
    CHECK(json.at("items").at(0).at("notes") == "=1+1, \"quoted\"");
    CHECK(json.at("items").at(1).at("accession_number") == "2");
}

TEST_CASE("Export to a file leaves it whole or leaves none", "[app][export]")
{
    CommandRunner runner;
    fileTwo(runner);
    const std::filesystem::path file = runner.folder.path() / "records ü.json";
    const Ran ran = runner.run({"export", "--format", "json", "--output", file.string()});
    CHECK(ran.code == 0);
    CHECK(ran.out.empty());
    CHECK(support::bytesOf(file) == runner.run({"export", "--format", "json"}).out);

    const std::filesystem::path nowhere = runner.folder.path() / "none" / "x.csv";
    const Ran refused = runner.run({"export", "--format", "csv", "--output", nowhere.string()});
    CHECK(refused.code == 3);
    CHECK_THAT(refused.err, Contains(nowhere.string()));
    const Ran onto =
        runner.run({"export", "--format", "csv", "--output", runner.folder.path().string()});
    CHECK(onto.code == 3);
    CHECK_FALSE(std::filesystem::exists(runner.folder.path().string() + ".part"));
    CHECK(runner.run({"export", "--format", "xml"}).code == 2);
}
