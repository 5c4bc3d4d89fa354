#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "models/typed_notation.h"
#include "tests/app/command_runner.h"

using Catch::Contains;
using support::CommandRunner;
using support::Ran;

namespace {

// An item whose engine read P for a person's R, before any maker was in view.
void fileCorrection(CommandRunner& runner, std::optional<bool> makers_in_view)
{
    models::ReadingRecord engine, person;
    engine.reading.reader = "line-reader";
    engine.reading.lines = models::parseTyped("P.H. & CO").lines;
    person.reading = engine.reading;
    person.reading.reader = "Ada Quell";
    person.reading.candidates_were_shown = makers_in_view;
    person.reading.lines[0].cells[0] = models::clearCell("R");
    person.reading.lines[0].cells[0].by = "Ada Quell";
    models::StampRecord stamp;
    stamp.readings = {engine, person};
    models::ItemRecord item;
    item.stamps = {stamp};
    models::AttributionRecord attribution;
    attribution.maker_id = "tarrow";
    attribution.maker_name = "Ruan Tarrow";
    item.attributions = {attribution};
    // By the clock that the commands go by.
    models::Archive::open(runner.archiveFolder(), "Ada Quell", [] {
        return std::string("1956-03-01T12:00:00Z");
    }).addItem(item);
}

nlohmann::json confusions(CommandRunner& runner)
{
    const Ran ran = runner.run({"confusion", "--json"});
    REQUIRE(ran.code == 0);
    return nlohmann::json::parse(ran.out);
}

nlohmann::json wayOf(const nlohmann::json& table, const std::string& truth, const std::string& seen)
{
    for (const nlohmann::json& row : table.at("confusions"))
        if (row.at("truth") == truth && row.at("seen") == seen)
            return row;
    return nullptr;
}

}  // namespace

TEST_CASE("Without an archive the starting confusions are shown", "[app][confusion]")
{
    CommandRunner runner;
    const nlohmann::json table = confusions(runner);
    CHECK(table.at("letters_typed") == 0);
    const nlohmann::json way = wayOf(table, "R", "P");
    REQUIRE(way.is_object());
    CHECK(way.at("start") == way.at("now"));
    CHECK_THAT(runner.run({"confusion"}).out, Contains("R  P"));
}

TEST_CASE("Corrections are counted, shown and forgotten, and the readings stay", "[app][confusion]")
{
    CommandRunner runner;
    fileCorrection(runner, false);
    fileCorrection(runner, false);
    fileCorrection(runner, true);
    fileCorrection(runner, std::nullopt);
    nlohmann::json table = confusions(runner);
    CHECK(table.at("letters_typed") == 2);
    const nlohmann::json way = wayOf(table, "R", "P");
    CHECK(way.at("corrections") == 2);
    CHECK(way.at("now").get<double>() > way.at("start").get<double>());
    CHECK(way.at("now").get<double>() < way.at("start").get<double>() + 0.01);

    const Ran forgot = runner.run({"confusion", "--forget"});
    CHECK(forgot.code == 0);
    CHECK_THAT(forgot.out, Contains("no longer count"));
    table = confusions(runner);
    CHECK(table.at("letters_typed") == 0);
    CHECK(wayOf(table, "R", "P").at("now") == wayOf(table, "R", "P").at("start"));
    CHECK(runner.archive().find({}).size() == 4);
}

TEST_CASE("Forgetting needs an archive", "[app][confusion]")
{
    CommandRunner runner;
    const Ran ran = runner.run({"confusion", "--forget"});
    CHECK(ran.code == 3);
    CHECK_THAT(ran.err, Contains("holds no archive"));
}

namespace {

// Of the maker whose items fileCorrection files, by what a command prints as JSON.
double shareOfTarrow(CommandRunner& runner, const std::vector<std::string>& arguments)
{
    const Ran ran = runner.run(arguments);
    CAPTURE(ran.err);
    const nlohmann::json list = nlohmann::json::parse(ran.out);
    for (const nlohmann::json& candidate : list.at("candidates"))
        if (candidate.at("maker_id") == "tarrow")
            return candidate.at("probability").get<double>();
    return 0;
}

std::vector<models::Line> seeAGap(const vision::EnhancedStamp&)
{
    return models::parseTyped("[- - -]").lines;
}

}  // namespace

TEST_CASE("The archive's makers weigh in match where the person names the archive", "[app][match]")
{
    CommandRunner runner;
    for (int i = 0; i < 12; ++i)
        fileCorrection(runner, true);
    const double without = shareOfTarrow(runner, {"match", "[- - -]", "--json"});
    CHECK(shareOfTarrow(runner, {"match", "[- - -]", "--json", "--archive",
                                 runner.archiveFolder().string()}) > 1.5 * without);
}

TEST_CASE("The archive's makers weigh in read, the named archive's or the usual one's",
          "[app][read]")
{
    CommandRunner runner;
    runner.sight = seeAGap;
    const std::string photo = support::writeStampedPhoto(runner.folder, "belt.jpg").string();
    const std::vector<std::string> usual = {"read", photo, "--json"};
    const double without = shareOfTarrow(runner, usual);
    for (int i = 0; i < 12; ++i)
        fileCorrection(runner, true);
    CHECK(shareOfTarrow(runner, usual) > 1.5 * without);

    const std::string folder = runner.archiveFolder().string();
    runner.environment.erase("WEFTMARK_ARCHIVE");  // and no home: no archive is known
    CHECK(shareOfTarrow(runner, usual) == Approx(without));
    CHECK(shareOfTarrow(runner, {"read", photo, "--json", "--archive", folder}) > 1.5 * without);
}

TEST_CASE("An archive that cannot be read stops read only where it was named", "[app][read]")
{
    CommandRunner runner;
    const std::string photo = support::writeStampedPhoto(runner.folder, "belt.jpg").string();
    const Ran none = runner.run({"read", photo, "--archive", runner.archiveFolder().string()});
    CHECK(none.code == 3);
    CHECK_THAT(none.err, Contains("holds no archive"));

    std::filesystem::create_directories(runner.archiveFolder());
    runner.folder.write("archive ä/archive.sqlite", std::string(4096, 'x'));
    const Ran usual = runner.run({"read", photo});
    CHECK(usual.code == 0);
    CHECK_THAT(usual.err, Contains("is not a Weftmark archive"));
    CHECK_THAT(usual.out, Contains("W. POLGLASE"));
    CHECK(runner.run({"read", photo, "--archive", runner.archiveFolder().string()}).code == 3);
}

TEST_CASE("What add notes of a conclusion counts the archive's makers", "[app][add]")
{
    CommandRunner runner;
    for (int i = 0; i < 12; ++i)
        fileCorrection(runner, true);
    const Ran ran =
        runner.run({"add", "--reading", "[- - -]", "--maker", "tarrow", "--accession", "99"});
    CHECK(ran.code == 0);
    const models::ItemRecord item = runner.archive().item("99").value();
    CHECK_THAT(item.attributions.at(0).engine_reasons,
               Contains("the archive holds 12 items of this maker"));
}

TEST_CASE("The unread letter that would settle most is told", "[app][match]")
{
    CommandRunner runner;
    const Ran ran = runner.run({"match", "[.]. (T|P)[- - -]", "--json"});
    const nlohmann::json settling = nlohmann::json::parse(ran.out).at("settling");
    REQUIRE(settling.is_object());
    CHECK(settling.at("stamp") == 0);
    CHECK(settling.at("line") == 0);
    CHECK(settling.at("bits").get<double>() > 0);
    CHECK_FALSE(settling.at("letters").empty());
    CHECK_THAT(runner.run({"match", "[.]. (T|P)[- - -]"}).out, Contains("look again at the"));
    CHECK(nlohmann::json::parse(runner.run({"match", "W. POLGLASE", "--json"}).out)
              .at("settling")
              .is_null());
}
