#include <catch2/catch.hpp>

#include "app/flow/register_hash.h"
#include "models/typed_notation.h"
#include "tests/app/command_runner.h"

using Catch::Contains;
using support::CommandRunner;
using support::Ran;

namespace {

models::ItemRecord onlyItem(const CommandRunner& runner)
{
    const models::Archive archive = runner.archive();
    const std::vector<models::FoundItem> found = archive.find({});
    REQUIRE(found.size() == 1);
    return archive.item(found[0].id).value();
}

}  // namespace

TEST_CASE("Add files what the engines read, as theirs", "[app][add]")
{
    CommandRunner runner;
    const std::string photo = support::writeStampedPhoto(runner.folder, "belt ü.jpg").string();
    const Ran ran = runner.run({"add", photo, "--accession", "SHT 12", "--type", "belt", "--notes",
                                "from the loft", "--maker", "polglase", "--date", "1941?",
                                "--certainty", "probable", "--reasons", "the P is whole"});
    CHECK(ran.code == 0);
    CHECK_THAT(ran.out, Contains("filed ") && Contains("SHT 12") && Contains("1 photograph"));

    const models::ItemRecord item = onlyItem(runner);
    CHECK(item.accession_number == "SHT 12");
    CHECK(item.type_id == "belt");
    CHECK(item.notes == "from the loft");
    CHECK(item.recorded_by == "Ines Körber");
    CHECK(item.recorded_at == "2024-03-01T08:00:00Z");
    REQUIRE(item.photos.size() == 1);
    CHECK(item.photos[0].original_name == "belt ü.jpg");
    CHECK(support::bytesOf(item.photos[0].file) == support::bytesOf(photo));
    REQUIRE_FALSE(item.stamps.empty());
    REQUIRE(item.stamps[0].views.size() == 1);
    REQUIRE(item.stamps[0].views[0].readings.size() == 1);
    const models::Reading& reading = item.stamps[0].views[0].readings[0].reading;
    CHECK(reading.reader == "fake 1");
    CHECK(reading.read_at == "2024-03-01T08:00:00Z");
    CHECK(models::plainText(reading.lines.at(0)) == "W. POLGLASE");
    REQUIRE(item.attributions.size() == 1);
    const models::AttributionRecord& attribution = item.attributions[0];
    CHECK(attribution.maker_name == "Wenna Polglase");
    CHECK(attribution.mark == "W. POLGLASE");
    CHECK(attribution.date_edtf == "1941?");
    CHECK(attribution.certainty == models::Certainty::Probable);
    CHECK(attribution.reasons == "the P is whole");
    CHECK_FALSE(attribution.engine_reasons.empty());
    CHECK(attribution.register_sha256 ==
          flow::registerSha256(runner.environment["WEFTMARK_REGISTER"]));
}

TEST_CASE("What a person reads is filed as theirs, and the photograph is not read", "[app][add]")
{
    CommandRunner runner;
    runner.sight = [](const vision::EnhancedStamp&) -> std::vector<models::Line> {
        FAIL("the photograph was read");
        return {};
    };
    const std::string photo = support::writeStampedPhoto(runner.folder, "belt.jpg").string();
    const Ran ran = runner.run({"add", photo, "--author", "Ole", "--reading", "[...]GLASE / 19[.]1",
                                "--reading", "[- - -]"});
    CHECK(ran.code == 0);

    const models::ItemRecord item = onlyItem(runner);
    CHECK(item.recorded_by == "Ole");
    CHECK(item.photos.size() == 1);
    CHECK(item.attributions.empty());
    REQUIRE(item.stamps.size() == 2);
    REQUIRE(item.stamps[0].readings.size() == 1);
    const models::Reading& reading = item.stamps[0].readings[0].reading;
    CHECK(reading.reader == "Ole");
    CHECK(models::writeTyped(reading.lines) == "[...]GLASE / 19[.]1");
    CHECK(reading.lines[0].cells[1].by == "Ole");
    CHECK(models::writeTyped(item.stamps[1].readings[0].reading.lines) == "[- - -]");
}

TEST_CASE("What cannot be filed is told, and nothing is", "[app][add]")
{
    CommandRunner runner;
    const std::string photo = support::writeStampedPhoto(runner.folder, "belt.jpg").string();
    const std::string text = runner.folder.write("text.jpg", "only text").string();
    const std::vector<std::vector<std::string>> wrong = {
        {"add"},
        {"add", photo, "--maker", "nobody"},
        {"add", photo, "--date", "about 1940"},
        {"add", photo, "--maker", "polglase", "--certainty", "sure"},
        {"add", photo, "--certainty", "certain"},
        {"add", photo, "--type", "boat"},
        {"add", photo, "--reading", "(A"},
        {"add", photo, "--mirrored", "--reading", "A"},
        {"add", photo, "--author", "A", "--author", "B"},
    };
    for (const std::vector<std::string>& arguments : wrong) {
        CAPTURE(arguments);
        const Ran ran = runner.run(arguments);
        CHECK(ran.code == 2);
        CHECK(ran.out.empty());
        CHECK_THAT(ran.err, Catch::StartsWith("weftmark: "));
    }
    const Ran failed = runner.run({"add", photo, text});
    CHECK(failed.code == 3);
    CHECK_THAT(failed.err, Contains(text));
    CHECK_FALSE(models::Archive::isIn(runner.archiveFolder()));

    CHECK(runner.run({"add", "--reading", "A", "--accession", "7"}).code == 0);
    const Ran again = runner.run({"add", "--reading", "B", "--accession", "7"});
    CHECK(again.code == 3);
    CHECK_THAT(again.err, Contains("accession number 7"));
    CHECK(onlyItem(runner).accession_number == "7");
}

TEST_CASE("A photograph without a stamp is filed all the same", "[app][add]")
{
    CommandRunner runner;
    runner.sight = [](const vision::EnhancedStamp&) { return std::vector<models::Line>{}; };
    const support::MarkedCanvas canvas = support::writeMarkedCanvas(runner.folder);
    const Ran ran = runner.run({"add", canvas.file.string()});
    CHECK(ran.code == 0);
    CHECK(onlyItem(runner).photos.size() == 1);
}

TEST_CASE("A mirror image is filed as one", "[app][add]")
{
    CommandRunner runner;
    runner.sight = [](const vision::EnhancedStamp& stamp) {
        return stamp.rectified.mirrored ? models::parseTyped("W. POLGLASE").lines
                                        : std::vector<models::Line>{};
    };
    const std::string photo = support::writeStampedPhoto(runner.folder, "belt.jpg").string();
    const Ran ran = runner.run({"add", photo, "--mirrored"});
    CHECK(ran.code == 0);
    CHECK_THAT(ran.out, Contains("W. POLGLASE"));  // what was read is told
    const models::ItemRecord item = onlyItem(runner);
    CHECK(flow::isMirrored(item.stamps.at(0).views.at(0).readings.at(0).reading));
}

TEST_CASE("A photograph filed with another item is told, and filed", "[app][add]")
{
    CommandRunner runner;
    const std::string photo = support::writeStampedPhoto(runner.folder, "belt.jpg").string();
    const Ran first = runner.run({"add", photo, "--accession", "7"});
    CHECK(first.err.empty());
    const Ran second = runner.run({"add", photo, "--accession", "8"});
    CHECK(second.code == 0);
    CHECK_THAT(second.err, Contains(photo) && Contains("item 7"));
    CHECK(runner.archive().find({}).size() == 2);
}
