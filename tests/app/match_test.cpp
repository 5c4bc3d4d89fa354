#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/command_runner.h"

using Catch::Contains;
using support::CommandRunner;
using support::Ran;

TEST_CASE("A typed reading is told what it can mean", "[app][match]")
{
    CommandRunner runner;
    const Ran ran = runner.run({"match", "W. POLG[- - -] / 19[.]1"});
    CHECK(ran.code == 0);
    CHECK_THAT(ran.out, Contains("Wenna Polglase [polglase]") && Contains("1941"));
    CHECK_THAT(ran.out, Contains("1 lost"));
    CHECK(ran.err.empty());
}

TEST_CASE("Candidates as JSON sum to one and are best first", "[app][match]")
{
    CommandRunner runner;
    for (const std::string reading :
         {"W. POLGLASE / 1941", "", "[- - -]", "[...]", "+ +", "R. TARROW / 19(4|9)8"}) {
        CAPTURE(reading);
        const Ran ran = runner.run({"match", reading, "--json", "--type", "belt"});
        CHECK(ran.code == 0);
        REQUIRE(ran.outLines().size() == 1);
        const nlohmann::json json = nlohmann::json::parse(ran.out);
        double sum = json.at("other_makers").get<double>() + json.at("unknown_maker").get<double>();
        double before = 1;
        for (const nlohmann::json& candidate : json.at("candidates")) {
            const double probability = candidate.at("probability");
            CHECK(probability <= before);
            before = probability;
            sum += probability;
        }
        CHECK(sum == Approx(1).margin(1e-6));  // the contract's tolerance
    }
}

TEST_CASE("The dates of each line are told, in the order of day and month that is said",
          "[app][match]")
{
    CommandRunner runner;
    const auto edtf = [&](const std::vector<std::string>& more) {
        std::vector<std::string> arguments = {"match", "W. POLGLASE / 3/4/41", "--json"};
        arguments.insert(arguments.end(), more.begin(), more.end());
        const nlohmann::json lines = nlohmann::json::parse(runner.run(arguments).out).at("lines");
        REQUIRE(lines.size() == 2);
        CHECK(lines[0].at("dates").empty());
        CHECK(lines[1].at("typed") == "3/4/41");
        const nlohmann::json first = lines[1].at("dates").at(0);
        CHECK(first.at("probability").get<double>() > 0.5);
        CHECK(first.at("first_cell") == 0);
        CHECK(first.at("end_cell") == 6);
        return first.at("edtf").get<std::string>();
    };
    CHECK(edtf({"--day-order", "day"}) == "1941-04-03");
    CHECK(edtf({"--day-order", "month"}) == "1941-03-04");
    CHECK(edtf({}) == "[1941-03-04,1941-04-03]");
    const Ran words = runner.run({"match", "3/4/41", "--day-order", "day"});
    CHECK_THAT(words.out, Contains("    date: 1941-04-03 (") && Contains(" %)"));
    const Ran wrong = runner.run({"match", "3/4/41", "--day-order", "year"});
    CHECK(wrong.code == 2);
    CHECK_THAT(wrong.err, Contains("write day or month"));
    CHECK_THAT(runner.run({"match", "--help"}).out, Contains("--day-order") && Contains("dates"));
}

TEST_CASE("A fault of notation is shown under its place", "[app][match]")
{
    CommandRunner runner;
    const Ran ran = runner.run({"match", "W. (POL"});
    CHECK(ran.code == 2);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, Contains("At character"));
    // The caret stands under the text, which is indented by two.
    const std::string::size_type caret = ran.err.find('^');
    const std::string::size_type line = ran.err.rfind('\n', caret) + 1;
    const std::string::size_type text = ran.err.find("W. (POL") - 2;
    REQUIRE(caret != std::string::npos);
    CHECK(ran.err.substr(line, caret - line) == std::string(caret - line, ' '));
    CHECK(line > text);
    CHECK(caret - line >= 2 + 3);
    CHECK(caret - line <= 2 + 7);
}

TEST_CASE("Match names what is wrong with its register or type", "[app][match]")
{
    CommandRunner runner;
    const Ran type = runner.run({"match", "WP", "--type", "boat"});
    CHECK(type.code == 2);
    CHECK_THAT(type.err, Contains("'boat'") && Contains("belt"));

    const Ran none = runner.run({"match", "WP", "--register", "/nowhere/at all"});
    CHECK(none.code == 3);
    CHECK_THAT(none.err, Contains("/nowhere/at all"));

    runner.folder.write("register/makers.csv", "maker_id,name\nx,\n");
    const Ran faulty = runner.run({"match", "WP"});
    CHECK(faulty.code == 3);
    CHECK_THAT(faulty.err, Contains("makers.csv") && Contains("line"));
}
