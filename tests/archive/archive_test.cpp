#include "models/archive/archive.h"

#include <catch2/catch.hpp>

#include "tests/archive/sample_records.h"
#include "tests/support/temporary_folder.h"

using namespace models;
using support::TemporaryFolder;

namespace {

Clock standingAt(const std::string& time)
{
    return [time] { return time; };
}

Archive openIn(const TemporaryFolder& folder, const std::string& author = "Ines Körber")
{
    return Archive::open(folder.path() / "Sammlung ü", author, standingAt("2024-03-01T08:00:00Z"));
}

std::size_t filesBelow(const std::filesystem::path& folder)
{
    std::size_t count = 0;
    if (std::filesystem::exists(folder))
        for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
            count += entry.is_regular_file() ? 1 : 0;
    return count;
}

}  // namespace

TEST_CASE("A record that was filed is read back whole", "[archive]")
{
    const TemporaryFolder folder;
    const ItemRecord item = support::fullItem(folder);
    ItemRecord stored;
    {
        Archive archive = openIn(folder);
        stored = archive.addItem(item);
    }

    ItemRecord expected = support::withoutFilledIn(item);
    CHECK(support::withoutFilledIn(stored) == expected);

    const Archive archive = openIn(folder, "somebody else");
    const std::optional<ItemRecord> read = archive.item(stored.id);
    REQUIRE(read);
    CHECK(*read == stored);  // ids, authors and times too
    CHECK(archive.item("SHT 1956/12 β") == read);
    CHECK(read->recorded_by == "Ines Körber");
    CHECK(read->stamps[0].views[1].recorded_at == "2024-03-01T08:00:00Z");
    CHECK(read->stamps[0].views[1].readings[0].reading == support::fullReading());
    CHECK(archive.item("nowhere") == std::nullopt);
}

TEST_CASE("Originals are copied by their hash and left alone", "[archive]")
{
    const TemporaryFolder folder;
    const ItemRecord item = support::fullItem(folder);
    Archive archive = openIn(folder);
    const ItemRecord stored = archive.addItem(item);

    const PhotoRecord& photo = stored.photos.at(0);
    CHECK(photo.file == folder.path() / "Sammlung ü" / "originals" / photo.sha256.substr(0, 2) /
                            (photo.sha256 + ".jpg"));
    CHECK(support::bytesOf(photo.file) == "first photo");
    CHECK(support::bytesOf(item.photos[0].file) == "first photo");
    CHECK(archive.originalPath(photo.sha256, "any name.png") == photo.file);
    CHECK(archive.originalPath(std::string(64, '0'), "x.PNG").filename() ==
          std::string(64, '0') + ".png");
}

TEST_CASE("A photo that is added twice is stored once", "[archive]")
{
    const TemporaryFolder folder;
    ItemRecord item = support::fullItem(folder);
    item.photos.push_back(item.photos.front());  // twice in one item
    Archive archive = openIn(folder);
    CHECK(archive.addItem(item).photos.size() == 2);

    item.accession_number = "another";
    item.photos[0].original_name = "renamed.png";  // the same bytes under another name
    item.photos[0].sha256.clear();
    const ItemRecord second = archive.addItem(item);
    CHECK(filesBelow(folder.path() / "Sammlung ü" / "originals") == 2);
    CHECK(second.photos[0].original_name == "renamed.png");
    CHECK(support::bytesOf(second.photos[0].file) == "first photo");
}

TEST_CASE("When a part of a record cannot be stored, nothing is", "[archive]")
{
    const TemporaryFolder folder;
    Archive archive = openIn(folder);
    ItemRecord item = support::fullItem(folder);

    SECTION("the second original is missing")
    {
        std::filesystem::remove(item.photos[1].file);
        CHECK_THROWS_WITH(archive.addItem(item), Catch::Contains("second.png"));
    }
    SECTION("the second original has changed since it was read")
    {
        folder.write("second.png", "other bytes");
        CHECK_THROWS_WITH(archive.addItem(item), Catch::Contains("has changed"));
    }
    SECTION("an original is a folder")
    {
        item.photos[1].file = folder.path();
        CHECK_THROWS_WITH(archive.addItem(item), Catch::Contains("not a file"));
    }
    SECTION("the last view names a photo that the item has not")
    {
        item.stamps[1].views[0].photo_sha256 = std::string(64, '9');
        CHECK_THROWS_WITH(archive.addItem(item), Catch::Contains("names a photo"));
    }
    SECTION("the event points to a stamp that is not there")
    {
        item.dated_events[0].stamp_id = "nowhere";
        CHECK_THROWS_AS(archive.addItem(item), ArchiveError);
    }
    SECTION("a number of a reading is not finite")
    {
        item.stamps[1].readings[0].reading.lines[0].cells[0].left_px = 1.0 / 0.0;
        CHECK_THROWS_AS(archive.addItem(item), std::invalid_argument);
    }
    CHECK(archive.find({}).empty());
    CHECK(filesBelow(folder.path() / "Sammlung ü" / "originals") == 0);

    // And the archive goes on working.
    archive.addItem(support::itemReading("WP 1940"));
    CHECK(archive.find({}).size() == 1);
}

TEST_CASE("An accession number is given once", "[archive]")
{
    const TemporaryFolder folder;
    Archive archive = openIn(folder);
    ItemRecord item = support::itemReading("A");
    item.accession_number = "12";
    archive.addItem(item);
    CHECK_THROWS_WITH(archive.addItem(item), Catch::Contains("12") && Catch::Contains("another"));

    item.accession_number.clear();  // seen but not owned: as often as one likes
    archive.addItem(item);
    archive.addItem(item);
    CHECK(archive.find({}).size() == 3);
}

TEST_CASE("Readings and attributions are added, never overwritten", "[archive]")
{
    const TemporaryFolder folder;
    Archive archive = openIn(folder);
    const ItemRecord stored = archive.addItem(support::fullItem(folder));
    const ViewRecord& view = stored.stamps[0].views[0];

    const Reading corrected = support::typedReading("Ole", "HARSKELL / 1941");
    const std::string id = archive.addReading(view.id, corrected, view.readings[0].id);
    AttributionRecord rival;
    rival.maker_name = "another maker";
    const std::string rival_id = archive.addAttribution(stored.id, rival);

    const ItemRecord read = *archive.item(stored.id);
    const std::vector<ReadingRecord>& readings = read.stamps[0].views[0].readings;
    REQUIRE(readings.size() == 2);
    CHECK(readings[0] == view.readings[0]);
    CHECK(readings[1].id == id);
    CHECK(readings[1].supersedes == view.readings[0].id);
    CHECK(readings[1].reading == corrected);
    REQUIRE(read.attributions.size() == 2);
    CHECK(read.attributions[0] == stored.attributions[0]);
    CHECK(read.attributions[1].id == rival_id);

    CHECK_THROWS_AS(archive.addReading("nowhere", corrected), ArchiveError);
    CHECK_THROWS_AS(archive.addReading(view.id, corrected, "nowhere"), ArchiveError);
    const std::string elsewhere = stored.stamps[1].views[0].readings[0].id;
    CHECK_THROWS_AS(archive.addReading(view.id, corrected, elsewhere), ArchiveError);
    CHECK_THROWS_AS(archive.addAttribution("nowhere", rival), ArchiveError);
    rival.supersedes = "nowhere";
    CHECK_THROWS_AS(archive.addAttribution(stored.id, rival), ArchiveError);
    CHECK(*archive.item(stored.id) == read);
}

TEST_CASE("A reading of the object itself is added to a stamp that stands in no photo", "[archive]")
{
    const TemporaryFolder folder;
    Archive archive = openIn(folder);
    ItemRecord item;
    item.stamps.emplace_back().readings.emplace_back().reading =
        support::typedReading("Ole", "HARSKELL / 1941");
    const ItemRecord stored = archive.addItem(item);
    const StampRecord& stamp = stored.stamps.at(0);
    const Reading corrected = support::typedReading("Ole", "HARSKILL / 1941");
    archive.addReading(stamp.id, corrected, stamp.readings.at(0).id);
    const ItemRecord now = archive.item(stored.id).value();
    REQUIRE(now.stamps.at(0).readings.size() == 2);
    CHECK(now.stamps[0].readings[1].reading == corrected);
    CHECK(now.stamps[0].readings[1].supersedes == stamp.readings[0].id);
    CHECK(now.stamps[0].views.empty());
}

TEST_CASE("A stamp found later is added to its item", "[archive]")
{
    const TemporaryFolder folder;
    Archive archive = openIn(folder);
    const ItemRecord stored = archive.addItem(support::fullItem(folder));

    StampRecord stamp = stored.stamps[1];
    stamp.id.clear();
    stamp.readings[0].id.clear();
    stamp.views[0].id.clear();
    stamp.views[0].readings[0].id.clear();
    const std::string id = archive.addStamp(stored.id, stamp);
    const ItemRecord read = *archive.item(stored.id);
    REQUIRE(read.stamps.size() == 3);
    CHECK(read.stamps[2].id == id);
    CHECK(read.stamps[2].views[0].readings[0].reading == support::fullReading());

    CHECK_THROWS_AS(archive.addStamp("nowhere", stamp), ArchiveError);
    CHECK_THROWS_AS(archive.addStamp(stored.id, read.stamps[2]), ArchiveError);  // its id is taken
    CHECK(archive.item(stored.id)->stamps.size() == 3);
}

TEST_CASE("An archive must know who records", "[archive]")
{
    const TemporaryFolder folder;
    CHECK_THROWS_AS(Archive::open(folder.path(), ""), std::invalid_argument);
    CHECK_FALSE(Archive::isIn(folder.path()));
    Archive::open(folder.path(), "Ole");
    CHECK(Archive::isIn(folder.path()));
}
