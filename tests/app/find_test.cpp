#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/command_runner.h"

using Catch::Contains;
using support::CommandRunner;
using support::Ran;

namespace {

void file(CommandRunner& runner, const std::string& accession, const std::string& reading,
          const std::vector<std::string>& more = {})
{
    std::vector<std::string> arguments = {"add", "--accession", accession, "--reading", reading};
    arguments.insert(arguments.end(), more.begin(), more.end());
    REQUIRE(runner.run(arguments).code == 0);
}

// Accession numbers of what is found, newest first.
std::vector<std::string> found(CommandRunner& runner, std::vector<std::string> query)
{
    query.insert(query.begin(), {"find", "--json"});
    const Ran ran = runner.run(query);
    std::vector<std::string> numbers;
    for (const std::string& line : ran.outLines())
        numbers.push_back(nlohmann::json::parse(line).at("accession_number"));
    CHECK(ran.code == (numbers.empty() ? 1 : 0));
    return numbers;
}

using Numbers = std::vector<std::string>;

}  // namespace

TEST_CASE("Find asks by words, maker and years, all of which must hold", "[app][find]")
{
    CommandRunner runner;
    file(runner, "1", "W. POLGLASE / 1941", {"--maker", "polglase", "--date", "1941"});
    file(runner, "2", "R. TARROW / 19[.]1", {"--maker", "tarrow", "--date", "1951?"});
    file(runner, "3", "[- - -]ARROW", {"--notes", "Fund aus der Mühle"});

    CHECK(found(runner, {}) == Numbers{"3", "2", "1"});
    CHECK(found(runner, {"1941"}) == Numbers{"2", "1"});  // [.] in the record matches
    CHECK(found(runner, {"19[.]1"}) == Numbers{"2", "1"});
    CHECK(found(runner, {"[- - -]ROW"}) == Numbers{"3", "2"});
    CHECK(found(runner, {"[.]9[..]"}) == Numbers{"2", "1"});
    CHECK(found(runner, {"mühle", "arrow"}) == Numbers{"3"});
    CHECK(found(runner, {"mühle", "polglase"}) == Numbers{});
    CHECK(found(runner, {"--maker", "wenna"}) == Numbers{"1"});
    CHECK(found(runner, {"--year", "1951"}) == Numbers{"2"});
    CHECK(found(runner, {"--year", "1940..1960"}) == Numbers{"2", "1"});
    CHECK(found(runner, {"--year", "..1945"}) == Numbers{"1"});
    CHECK(found(runner, {"1941", "--maker", "tarrow", "--year", "1950.."}) == Numbers{"2"});
}

TEST_CASE("Find prints a line of facts and a line of text", "[app][find]")
{
    CommandRunner runner;
    file(runner, "SHT 1", "W. POLGLASE / 1941", {"--maker", "polglase", "--date", "1941"});
    const Ran ran = runner.run({"find", "polglase"});
    CHECK(ran.code == 0);
    CHECK_THAT(ran.out, Contains("SHT 1  -  Wenna Polglase  1941\n    W. POLGLASE / 1941"));

    const Ran none = runner.run({"find", "walrus"});
    CHECK(none.code == 1);
    CHECK(none.out.empty());
    CHECK_THAT(none.err, Contains("nothing filed fits"));
}

TEST_CASE("Find refuses what it does not understand", "[app][find]")
{
    CommandRunner runner;
    const Ran nowhere = runner.run({"find", "a"});
    CHECK(nowhere.code == 3);
    CHECK_THAT(nowhere.err, Contains("holds no archive"));
    CHECK_FALSE(models::Archive::isIn(runner.archiveFolder()));  // and makes none

    file(runner, "1", "A");
    for (const std::string bad :
         {"194", "19400", "1941..1940", "..", "194x", "1940...1941", "-194", "1940-03"}) {
        CAPTURE(bad);
        CHECK(runner.run({"find", "--year=" + bad}).code == 2);
    }
    CHECK(runner.run({"find", "(A"}).code == 2);
}

TEST_CASE("Show prints a record by id or accession number", "[app][find]")
{
    CommandRunner runner;
    file(runner, "SHT 1", "W. POL[...] / 1941",
         {"--maker", "polglase", "--date", "1941", "--notes", "größer"});
    const Ran ran = runner.run({"show", "SHT 1"});
    CHECK(ran.code == 0);
    CHECK_THAT(ran.out, Contains("W. POL[...]") && Contains("größer") &&
                            Contains("possible: Wenna Polglase, 1941 (Ines Körber"));
    const models::FoundItem item = runner.archive().find({}).at(0);
    CHECK(runner.run({"show", item.id}).out == ran.out);

    const nlohmann::json json = nlohmann::json::parse(runner.run({"show", item.id, "--json"}).out);
    CHECK(json.at("notes") == "größer");
    CHECK(json.at("stamps").at(0).at("readings").at(0).at("reading").at("reader") == "Ines Körber");

    const Ran none = runner.run({"show", "SHT 2"});
    CHECK(none.code == 1);
    CHECK_THAT(none.err, Contains("SHT 2"));
}
