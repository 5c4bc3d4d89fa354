// The record of an item at the command line, by the demo register.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/cli/command_line.h"
#include "app/cli/item_facts.h"
#include "app/flow/item_facts.h"
#include "tests/app/command_runner.h"

using Catch::Contains;
using support::CommandRunner;
using support::Ran;

namespace {

// A runner with the register of the demo.
struct DemoRunner : CommandRunner {
    DemoRunner()
    {
        environment["WEFTMARK_REGISTER"] = std::string(WEFTMARK_SOURCE_DIR) + "/models/register";
    }

    nlohmann::json json(std::vector<std::string> arguments)
    {
        arguments.push_back("--json");
        const Ran ran = run(arguments);
        CAPTURE(ran.err);
        REQUIRE(ran.code == 0);
        return nlohmann::json::parse(ran.out);
    }
};

const std::vector<std::string> full_item = {"item",
                                            "--accession",
                                            "SHT 1",
                                            "--type",
                                            "belt-1937",
                                            "--owner",
                                            "the Trust",
                                            "--condition",
                                            "worn at the tab",
                                            "--place",
                                            "Saltmere",
                                            "--feature",
                                            "end-tab=present",
                                            "--feature",
                                            "steel-buckle=hidden",
                                            "--measure",
                                            "length=914.4 mm, tape",
                                            "--measure",
                                            "width=2 1/4 in",
                                            "--stamp",
                                            "J.H. & CO / 1940",
                                            "--part",
                                            "body",
                                            "--on",
                                            "inside, at the tab",
                                            "--method",
                                            "ink",
                                            "--event",
                                            "inspected=1941",
                                            "--maker",
                                            "hewlaby",
                                            "--certainty",
                                            "probable",
                                            "--reasons",
                                            "the initials"};

}  // namespace

TEST_CASE("An item is recorded whole and dated at once", "[app][item]")
{
    DemoRunner runner;
    const nlohmann::json json = runner.json(full_item);
    CHECK(json.at("accession_number") == "SHT 1");
    CHECK(json.at("owner") == "the Trust");
    CHECK(json.at("place_found") == "Saltmere");
    CHECK(json.at("features").at(0).at("seen") == "present");
    CHECK(json.at("features").at(1).at("seen") == "cannot_be_seen");
    CHECK(json.at("measurements").at(0).at("how") == "tape");
    CHECK(json.at("measurements").at(1).at("value") == 2.25);
    CHECK(json.at("measurements").at(1).at("unit") == "in");
    CHECK(json.at("stamps").at(0).at("part") == "body");
    CHECK(json.at("stamps").at(0).at("place") == "inside, at the tab");
    CHECK(json.at("stamps").at(0).at("method") == "ink");
    CHECK(json.at("dated_events").at(0).at("bound") == "not_after");
    CHECK(json.at("dated_events").at(0).at("first_day") == "1941-01-01");
    CHECK(json.at("dated_events").at(0).at("last_day") == "1941-12-31");
    CHECK(json.at("attributions").at(0).at("certainty") == "probable");
    const nlohmann::json part = json.at("dating").at("parts").at(0);
    CHECK(part.at("edtf") == "1940");
    CHECK(part.at("is_contradiction") == false);

    const models::ItemRecord stored = runner.archive().item("SHT 1").value();
    CHECK(stored.features.size() == 2);
    CHECK(stored.stamps.at(0).readings.at(0).reading.basis == models::Basis::ObjectInHand);
}

TEST_CASE("The record in words has both units, and says why", "[app][item]")
{
    DemoRunner runner;
    const Ran ran = runner.run(full_item);
    REQUIRE(ran.code == 0);
    CHECK_THAT(ran.out, Contains("length: 914.4 mm (36 in), tape"));
    CHECK_THAT(ran.out, Contains("width: 2 1/4 in (57.1 mm)") || Contains("(57.2 mm)"));
    CHECK_THAT(ran.out, Contains("feature steel-buckle: hidden, cannot be seen"));
    CHECK_THAT(ran.out, Contains("What the evidence gives now"));
    CHECK_THAT(ran.out, Contains("the item: 1940, with"));
    CHECK_THAT(ran.out, Contains("stamp 1, 1940: made in 1940"));
    CHECK_THAT(ran.out, Contains("says nothing: Blackened steel buckle: it cannot be seen"));
}

TEST_CASE("More of an item is added, and what was wrong is corrected", "[app][item]")
{
    DemoRunner runner;
    REQUIRE(runner.run(full_item).code == 0);
    const nlohmann::json json =
        runner.json({"item", "SHT 1", "--stamp", "Z.B. CO / 1952", "--part", "fitting", "--feature",
                     "end-tab=altered", "--owner", "A. Quay", "--take-back",
                     "measurement:1=the tape had shrunk", "--event", "repaired=1950, stamp 2",
                     "--maker", "holvane", "--reasons", "an I, not a J"});
    CHECK(json.at("owner") == "A. Quay");
    CHECK(json.at("stamps").size() == 2);
    CHECK(json.at("features").size() == 3);
    CHECK(json.at("corrections").size() == 2);
    CHECK(json.at("corrections").at(0).at("before") == "the Trust");
    CHECK(json.at("attributions").size() == 2);  // rivals stand side by side
    CHECK(json.at("dated_events").at(1).at("stamp_id") == json.at("stamps").at(1).at("id"));
    REQUIRE(json.at("dating").at("parts").size() == 2);
    CHECK(json.at("dating").at("parts").at(1).at("is_item") == false);
    const Ran shown = runner.run({"show", "SHT 1"});
    CHECK_THAT(shown.out, Contains("length: 914.4 mm (36 in), tape, taken back since"));
    CHECK_THAT(shown.out, Contains("feature end-tab: present, corrected since"));
    CHECK_THAT(shown.out, Contains("item owner was 'the Trust', is 'A. Quay'"));

    const nlohmann::json again =
        runner.json({"item", "SHT 1", "--stamp-number", "1", "--part", "replacement",
                     "--later-added", "--maker", "hewlaby", "--replaces", "2"});
    CHECK(again.at("stamps").at(0).at("part") == "replacement");
    CHECK(again.at("stamps").at(0).at("later_added") == true);
    CHECK(again.at("attributions").at(2).at("supersedes") ==
          again.at("attributions").at(1).at("id"));
}

TEST_CASE("A new item takes what repeats from the item before, and says so", "[app][item]")
{
    DemoRunner runner;
    REQUIRE(runner.run(full_item).code == 0);
    const Ran ran = runner.run({"item", "--accession", "SHT 2", "--stamp", "1941"});
    REQUIRE(ran.code == 0);
    CHECK_THAT(ran.err, Contains("as the item before (SHT 1): type belt-1937, owner the Trust, "
                                 "place found Saltmere"));
    const models::ItemRecord item = runner.archive().item("SHT 2").value();
    CHECK(item.type_id == "belt-1937");
    CHECK(item.condition.empty());  // what does not repeat is not taken
    REQUIRE(runner.run({"item", "--accession", "SHT 3", "--owner", "B. Quay"}).code == 0);
    CHECK(runner.archive().item("SHT 3")->owner == "B. Quay");
    REQUIRE(runner.run({"item", "--accession", "SHT 4", "--fresh"}).code == 0);
    CHECK(runner.archive().item("SHT 4")->owner.empty());
    REQUIRE(runner.run({"item", "--accession", "SHT 5", "--owner", ""}).code == 0);
    CHECK(runner.archive().item("SHT 5")->owner.empty());
}

TEST_CASE("What cannot be understood is refused before anything is written", "[app][item]")
{
    DemoRunner runner;
    REQUIRE(runner.run(full_item).code == 0);
    const auto refused = [&](std::vector<std::string> more, const std::string& sentence) {
        more.insert(more.begin(), {"item", "SHT 1", "--measure", "depth=3 mm"});
        const Ran ran = runner.run(more);
        CAPTURE(ran.err);
        CHECK(ran.code == 2);
        CHECK_THAT(ran.err, Contains(sentence));
    };
    refused({"--feature", "end-tab"}, "FEATURE=present");
    refused({"--feature", "end-tab=perhaps"}, "FEATURE=present");
    refused({"--feature", "knob=present"}, "no feature 'knob'");
    refused({"--measure", "914 mm"}, "length=914 mm");
    refused({"--measure", "length=914"}, "length=914 mm");
    refused({"--measure", "length=1/0 in"}, "length=914 mm");
    refused({"--event", "washed=1940"}, "is no event");
    refused({"--event", "made=soon"}, "not a date in EDTF");
    refused({"--event", "made=1940, stamp 7"}, "names none of them");
    refused({"--event", "made=1940, hem"}, "names no stamp");
    refused({"--stamp", "1940", "--part", "knob"}, "is no part");
    refused({"--stamp", "1940", "--method", "spit"}, "is no method");
    refused({"--part", "body"}, "give a --stamp");
    refused({"--stamp-number", "9", "--part", "body"}, "no stamp number 9");
    refused({"--type", "hat"}, "no item type 'hat'");
    refused({"--maker", "nobody"}, "no maker 'nobody'");
    refused({"--certainty", "sure", "--maker", "hewlaby"}, "is no word of certainty");
    refused({"--reasons", "because"}, "belong to a conclusion");
    refused({"--maker", "hewlaby", "--replaces", "5"}, "no conclusion number 5");
    refused({"--take-back", "measurement:7=why"}, "no measurement number 7");
    refused({"--take-back", "measurement"}, "takes nothing back");
    refused({"--accession", "SHT 9"}, "stays as it was given");
    CHECK(runner.archive().item("SHT 1")->measurements.size() == 2);
    CHECK(runner.run({"item", "SHT 99"}).code == 1);
}

TEST_CASE("Lengths are told in millimetres and inches", "[app][item]")
{
    // The inch is 25.4 mm (international yard and pound agreement, 1959).
    CHECK(flow::lengthInWords(25.4, "mm") == "25.4 mm (1 in)");
    CHECK(flow::lengthInWords(57.15, "mm") == "57.15 mm (2 1/4 in)");
    CHECK(flow::lengthInWords(10, "mm") == "10 mm (0.39 in)");
    CHECK(flow::lengthInWords(0.5, "in") == "1/2 in (12.7 mm)");
    CHECK(flow::lengthInWords(36, "in") == "36 in (914.4 mm)");
    CHECK(cli::measurementFrom("width=5.7 cm").value == Approx(57));
    CHECK(cli::measurementFrom("width=5.7 cm").unit == "mm");
    CHECK(cli::measurementFrom("width = 3/8\"").value == Approx(0.375));
    CHECK_THROWS_AS(cli::measurementFrom("width=2 4 in"), cli::UsageError);
    CHECK_THROWS_AS(cli::measurementFrom("width=1.2.3 mm"), cli::UsageError);
}
