// What is added to a record and corrected in it afterwards, and archives of the version before.
#include <fstream>
#include <sstream>

#include <QSqlDatabase>
#include <QSqlError>
#include <QSqlQuery>
#include <QString>

#include <catch2/catch.hpp>

#include "models/archive/archive.h"
#include "models/archive/standing.h"
#include "tests/archive/sample_records.h"

using namespace models;
using Catch::Contains;
using support::TemporaryFolder;

namespace {

Archive archiveOf(const std::filesystem::path& folder, const std::string& author = "Ines")
{
    return Archive::open(folder, author, [] { return std::string("2024-03-01T08:00:00Z"); });
}

CorrectionRecord correctionOf(const std::string& about, const std::string& about_id,
                              const std::string& field, const std::string& value)
{
    CorrectionRecord correction;
    correction.about = about;
    correction.about_id = about_id;
    correction.field = field;
    correction.value = value;
    return correction;
}

void correct(Archive& archive, const std::string& item_id, const CorrectionRecord& correction)
{
    RecordAdditions additions;
    additions.corrections = {correction};
    archive.addTo(item_id, additions);
}

// Makes the archive file of version 1 whose tables and rows are stored as text.
void makeVersion1(const std::filesystem::path& folder)
{
    std::ifstream stored(WEFTMARK_SOURCE_DIR "/tests/archive/archive_version_1.sql");
    REQUIRE(stored);
    std::stringstream text;
    text << stored.rdbuf();
    {
        QSqlDatabase database = QSqlDatabase::addDatabase("QSQLITE", "version 1");
        database.setDatabaseName(QString::fromStdString((folder / "archive.sqlite").string()));
        REQUIRE(database.open());
        std::string statement;
        for (std::string line; std::getline(text, line);) {
            statement += line + "\n";
            if (line.empty() || line.back() != ';')
                continue;
            QSqlQuery query(database);
            const bool done = query.exec(QString::fromStdString(statement));
            CAPTURE(statement, query.lastError().text().toStdString());
            REQUIRE(done);
            statement.clear();
        }
    }
    QSqlDatabase::removeDatabase("version 1");
}

}  // namespace

TEST_CASE("Facts are added to an item that is filed", "[archive]")
{
    const TemporaryFolder folder;
    Archive archive = archiveOf(folder.path());
    const std::string id = archive.addItem(support::itemReading("J.H. & CO / 1940")).id;
    DatedEventRecord event;
    event.kind = EventKind::Inspected;
    event.bound = DateBound::NotAfter;
    event.edtf = "1941";
    FeatureSeenRecord feature;
    feature.feature_id = "end-tab";
    feature.seen = FeatureSeen::Present;
    MeasurementRecord measurement;
    measurement.what = "length";
    measurement.unit = "mm";
    measurement.value = 914.4;
    RecordAdditions additions;
    additions.stamps = support::itemReading("INSP 1941").stamps;
    additions.stamps[0].id = newRecordId();
    event.stamp_id = additions.stamps[0].id;
    additions.dated_events = {event};
    additions.features = {feature};
    additions.measurements = {measurement};
    archive.addTo(id, additions);

    const ItemRecord item = archive.item(id).value();
    REQUIRE(item.dated_events.size() == 1);
    CHECK(item.dated_events[0].edtf == "1941");
    REQUIRE(item.stamps.size() == 2);
    CHECK(item.dated_events[0].stamp_id == item.stamps[1].id);
    CHECK(item.features.at(0).seen == FeatureSeen::Present);
    CHECK(item.measurements.at(0).value == 914.4);
    CHECK(item.measurements.at(0).recorded_by == "Ines");
    CHECK_THROWS_WITH(archive.addTo("nowhere", additions), Contains("there is no item"));

    // All or nothing: the last part is refused, so that nothing of it stays.
    additions.stamps.clear();
    additions.dated_events.clear();
    additions.corrections = {correctionOf("stamp", "none", "part", "body")};
    CHECK_THROWS_AS(archive.addTo(id, additions), ArchiveError);
    CHECK(archive.item(id)->measurements.size() == 1);
}

TEST_CASE("A correction shows what holds and keeps what held", "[archive]")
{
    const TemporaryFolder folder;
    Archive archive = archiveOf(folder.path());
    ItemRecord item = support::itemReading("J.H. & CO / 1940");
    item.owner = "the Trust";
    item.type_id = "belt-1921";
    const ItemRecord stored = archive.addItem(item);
    correct(archive, stored.id, correctionOf("item", "", "owner", "A. Quay, on loan"));
    correct(archive, stored.id, correctionOf("item", "", "type_id", "belt-1937"));
    correct(archive, stored.id, correctionOf("stamp", stored.stamps[0].id, "part", "fitting"));
    correct(archive, stored.id, correctionOf("stamp", stored.stamps[0].id, "later_added", "1"));
    correct(archive, stored.id, correctionOf("item", "", "owner", "A. Quay"));

    const ItemRecord now = archiveOf(folder.path()).item(stored.id).value();
    CHECK(now.owner == "A. Quay");
    CHECK(now.type_id == "belt-1937");
    CHECK(now.stamps[0].part == StampPart::Fitting);
    CHECK(now.stamps[0].later_added);
    REQUIRE(now.corrections.size() == 5);
    CHECK(now.corrections[0].before == "the Trust");
    CHECK(now.corrections[4].before == "A. Quay, on loan");
    CHECK(now.corrections[2].before == "unknown");
    CHECK(archive.find({"belt-1937", "", {}, {}}).at(0).type_id == "belt-1937");
    CHECK(archive.find({"Trust", "", {}, {}}).size() == 1);  // found by what held, too
}

TEST_CASE("A fact that is taken back stands no more, a later one goes before", "[archive]")
{
    const TemporaryFolder folder;
    Archive archive = archiveOf(folder.path());
    ItemRecord item = support::itemReading("1940");
    FeatureSeenRecord feature;
    feature.feature_id = "end-tab";
    feature.seen = FeatureSeen::Present;
    item.features = {feature};
    MeasurementRecord length;
    length.what = "length";
    item.measurements = {length};
    const ItemRecord stored = archive.addItem(item);
    feature.seen = FeatureSeen::AlteredLater;
    RecordAdditions again;
    again.features = {feature};
    archive.addTo(stored.id, again);
    correct(
        archive, stored.id,
        correctionOf("measurement", stored.measurements[0].id, "withdrawn", "the tape had shrunk"));

    const ItemRecord now = archive.item(stored.id).value();
    CHECK(now.features.size() == 2);
    REQUIRE(standingFeatures(now).size() == 1);
    CHECK(standingFeatures(now)[0].seen == FeatureSeen::AlteredLater);
    CHECK(now.measurements.size() == 1);
    CHECK(standingMeasurements(now).empty());
    CHECK(standingEvents(now).empty());
}

TEST_CASE("A correction of what is not there is refused", "[archive]")
{
    const TemporaryFolder folder;
    Archive archive = archiveOf(folder.path());
    const ItemRecord stored = archive.addItem(support::itemReading("1940"));
    const std::string stamp = stored.stamps[0].id;
    const auto refused = [&](const CorrectionRecord& correction) {
        correct(archive, stored.id, correction);
    };
    CHECK_THROWS_AS(refused(correctionOf("item", "", "accession_number", "7")),
                    std::invalid_argument);
    CHECK_THROWS_AS(refused(correctionOf("stamp", stamp, "part", "knob")), std::invalid_argument);
    CHECK_THROWS_AS(refused(correctionOf("stamp", stamp, "colour", "red")), std::invalid_argument);
    CHECK_THROWS_AS(refused(correctionOf("reading", stamp, "withdrawn", "x")),
                    std::invalid_argument);
    CHECK_THROWS_AS(refused(correctionOf("stamp", "none", "part", "body")), ArchiveError);
    CHECK_THROWS_AS(refused(correctionOf("measurement", "none", "withdrawn", "x")), ArchiveError);
    CHECK_THROWS_AS(correct(archive, "none", correctionOf("item", "", "owner", "x")), ArchiveError);
    CHECK(archive.item(stored.id)->corrections.empty());
}

TEST_CASE("An archive of version 1 opens whole and takes what is new", "[archive]")
{
    const TemporaryFolder folder;
    makeVersion1(folder.path());
    {
        Archive archive = archiveOf(folder.path());
        REQUIRE(archive.find({}).size() == 3);
        const ItemRecord item = archive.item("SHT 3").value();
        CHECK(item.type_id == "shoulder-strap");
        CHECK(item.recorded_by == "B. Quay");
        CHECK(item.attributions.at(0).maker_id == "hewlaby");
        CHECK(item.attributions.at(0).date_edtf == "1940?");
        REQUIRE(item.stamps.at(0).readings.size() == 1);
        CHECK(plainText(item.stamps[0].readings[0].reading.lines.at(0)) == "J.H. & CO");
        CHECK(item.corrections.empty());
        correct(archive, item.id, correctionOf("item", "", "owner", "the Trust"));
    }
    // Stepped up once; a second opening changes nothing.
    CHECK(archiveOf(folder.path(), "another").item("SHT 3")->owner == "the Trust");
}
