#include "app/flow/filing.h"

#include <memory>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>

#include "app/flow/examine.h"
#include "app/flow/register_hash.h"
#include "tests/app/fake_reader.h"
#include "tests/support/picture_files.h"

using support::TemporaryFolder;

TEST_CASE("What was examined is filed as it was seen", "[app][filing]")
{
    const TemporaryFolder folder;
    const support::MarkedCanvas canvas = support::writeMarkedCanvas(folder);
    std::vector<std::unique_ptr<vision::TextReader>> readers;
    readers.push_back(std::make_unique<support::FakeReader>("fake", support::seePolglase));
    flow::Engines engines = support::enginesWith(std::move(readers));
    const flow::Examination examination =
        flow::examinePhoto(canvas.file, engines, {.outline = canvas.upside_down});

    const models::PhotoRecord photo = flow::photoRecord(examination.photo);
    CHECK(photo.file == canvas.file);
    CHECK(photo.original_name == "canvas.png");
    CHECK(photo.width_px == 600);
    CHECK(photo.height_px == 400);
    CHECK(photo.sha256.size() == 64);

    const models::StampRecord stamp =
        flow::stampRecord(examination.photo, examination.stamps.at(0), "1956-03-01T12:00:00Z");
    REQUIRE(stamp.views.size() == 1);
    CHECK(stamp.views[0].photo_sha256 == photo.sha256);
    CHECK(stamp.views[0].outline_px ==
          std::array<double, 8>{450, 250, 150, 250, 150, 150, 450, 150});
    REQUIRE(stamp.views[0].readings.size() == 1);
    models::Reading reading = examination.stamps[0].readings[0];
    reading.read_at = "1956-03-01T12:00:00Z";
    CHECK(stamp.views[0].readings[0].reading == reading);

    const models::AttributionRecord attribution =
        flow::attributionRecord("polglase", engines.known, examination.candidates);
    CHECK(attribution.maker_name == "Wenna Polglase");
    CHECK(attribution.mark == "W. POLGLASE");
    CHECK_FALSE(attribution.engine_reasons.empty());
    CHECK(flow::attributionRecord("nobody", engines.known, {}).maker_name == "nobody");
}

TEST_CASE("A register's hash changes with what it says", "[app][filing]")
{
    const TemporaryFolder folder;
    const std::filesystem::path known = support::writeRegister(folder);
    const std::string before = flow::registerSha256(known);
    CHECK(before.size() == 64);
    folder.write("register/SOURCE.md", "not a part of it");
    CHECK(flow::registerSha256(known) == before);
    folder.write("register/spellings.csv", "text,same_as\nLTD,LIMITED\n");
    CHECK(flow::registerSha256(known) != before);
    CHECK_THROWS_AS(flow::registerSha256(folder.path() / "none"), models::RegisterError);
}
