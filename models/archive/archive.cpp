#include "models/archive/archive.h"

#include <ctime>
#include <system_error>
#include <utility>

#include "models/archive/connection.h"
#include "models/archive/corrections.h"
#include "models/archive/entry.h"
#include "models/archive/schema.h"

namespace models {

namespace {

constexpr const char* file_name = "archive.sqlite";

std::filesystem::path prepareFile(const std::filesystem::path& folder)
{
    std::error_code trouble;
    std::filesystem::create_directories(folder, trouble);
    if (!std::filesystem::is_directory(folder, trouble))
        throw ArchiveError(folder.string() +
                           " cannot be made a folder for the archive; name one that can be made "
                           "and written");
    const std::filesystem::path file = folder / file_name;
    if (std::filesystem::exists(file, trouble) && std::filesystem::file_size(file, trouble) == 0)
        throw ArchiveError(file.string() +
                           " is empty, its records are lost; put the file from "
                           "your backup in its place, or remove it to begin anew");
    return file;
}

void checkAccessionNumber(const sql::Database& database, const std::string& number)
{
    if (number.empty())
        return;
    const std::vector<sql::Row> rows =
        database.rows("item", "WHERE accession_number = :number", {{"number", number}});
    if (!rows.empty())
        throw ArchiveError("the accession number " + number + " is used already in " +
                           database.file().string() + ", by a record of " +
                           rows.front().text("recorded_at") + "; give another number");
}

void insertItem(const Entry& entry, const ItemRecord& item)
{
    insertAuthored(entry, "item",
                   {{"id", item.id},
                    {"ordinal", nextOrdinal(entry.database, "item", {}, {})},
                    {"type_id", item.type_id},
                    {"accession_number", sql::textOrNull(item.accession_number)},
                    {"owner", item.owner},
                    {"condition", item.condition},
                    {"place_found", item.place_found},
                    {"notes", item.notes}});
}

// Saves the photos, each original once however often the item lists it.
PhotoIds savePhotos(const Entry& entry, ItemRecord& item, OriginalsCopy& originals)
{
    PhotoIds ids;
    std::vector<PhotoRecord> saved;
    for (PhotoRecord& photo : item.photos) {
        if (photo.sha256.empty())
            photo.sha256 = sha256OfFile(photo.file);
        if (ids.contains(photo.sha256))
            continue;
        saved.push_back(savePhoto(entry, item.id, photo, originals));
        ids[saved.back().sha256] = saved.back().id;
    }
    item.photos = std::move(saved);
    return ids;
}

void saveParts(const Entry& entry, ItemRecord& item, const PhotoIds& photo_ids)
{
    for (StampRecord& stamp : item.stamps)
        stamp = saveStamp(entry, item.id, stamp, photo_ids);
    for (AttributionRecord& attribution : item.attributions)
        attribution = saveAttribution(entry, item.id, attribution);
    for (DatedEventRecord& event : item.dated_events)
        event = saveDatedEvent(entry, item.id, event);
    for (FeatureSeenRecord& feature : item.features)
        feature = saveFeatureSeen(entry, item.id, feature);
    for (MeasurementRecord& measurement : item.measurements)
        measurement = saveMeasurement(entry, item.id, measurement);
}

ItemRecord itemOf(const sql::Row& row)
{
    ItemRecord item;
    item.id = row.text("id");
    item.type_id = row.text("type_id");
    item.accession_number = row.text("accession_number");
    item.owner = row.text("owner");
    item.condition = row.text("condition");
    item.place_found = row.text("place_found");
    item.notes = row.text("notes");
    item.recorded_by = row.text("recorded_by");
    item.recorded_at = row.text("recorded_at");
    return item;
}

}  // namespace

ItemRecord loadItem(const sql::Database& database, const std::filesystem::path& folder,
                    const sql::Row& row)
{
    ItemRecord item = itemOf(row);
    item.photos = loadPhotos(database, folder, item.id);
    item.stamps = loadStamps(database, item.id);
    item.attributions = loadAttributions(database, item.id);
    item.dated_events = loadDatedEvents(database, item.id);
    item.features = loadFeaturesSeen(database, item.id);
    item.measurements = loadMeasurements(database, item.id);
    applyCorrections(item, loadCorrections(database, item.id));
    return item;
}

std::string utcNow()
{
    const std::time_t now = std::time(nullptr);
    std::tm parts{};
    gmtime_r(&now, &parts);
    char text[32];
    std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", &parts);
    return text;
}

Archive::Connection::Connection(const std::filesystem::path& archive_folder, std::string by,
                                Clock tells_time)
    : folder(archive_folder),
      author(std::move(by)),
      clock(std::move(tells_time)),
      database(prepareFile(archive_folder))
{
    sql::prepareSchema(database, clock());
}

Archive Archive::open(const std::filesystem::path& folder, const std::string& author, Clock clock)
{
    if (author.empty())
        throw std::invalid_argument("an archive needs to know who records");
    return Archive(std::make_unique<Connection>(folder, author, std::move(clock)));
}

bool Archive::isIn(const std::filesystem::path& folder)
{
    std::error_code ignored;
    return std::filesystem::exists(folder / file_name, ignored);
}

Archive::Archive(std::unique_ptr<Connection> connection) : connection_(std::move(connection))
{
}
Archive::~Archive() = default;
Archive::Archive(Archive&&) noexcept = default;
Archive& Archive::operator=(Archive&&) noexcept = default;

ItemRecord Archive::addItem(const ItemRecord& item)
{
    sql::Transaction transaction(connection_->database, sql::Transaction::Kind::Writing);
    OriginalsCopy originals(connection_->folder);
    const Entry entry = connection_->entry();
    checkAccessionNumber(entry.database, item.accession_number);

    ItemRecord stored = item;
    stored.id = idOrNew(item.id);
    stored.recorded_by = entry.author;
    stored.recorded_at = entry.now;
    insertItem(entry, stored);
    const PhotoIds photo_ids = savePhotos(entry, stored, originals);
    saveParts(entry, stored, photo_ids);

    transaction.commit();
    originals.keep();
    return stored;
}

std::string Archive::addReading(const std::string& view_or_stamp_id, const Reading& reading,
                                const std::string& supersedes)
{
    sql::Transaction transaction(connection_->database, sql::Transaction::Kind::Writing);
    const Entry entry = connection_->entry();
    const auto rowsOf = [&](const char* table) {
        return entry.database.rows(table, "WHERE id = :id", {{"id", view_or_stamp_id}});
    };
    const std::vector<sql::Row> views = rowsOf("stamp_view");
    if (views.empty() && rowsOf("stamp").empty())
        throw ArchiveError("there is no view or stamp " + view_or_stamp_id + " in " +
                           entry.database.file().string() + "; look its id up in the record");
    ReadingRecord record;
    record.reading = reading;
    record.supersedes = supersedes;
    record = views.empty()
                 ? saveReading(entry, view_or_stamp_id, {}, record)
                 : saveReading(entry, views.front().text("stamp_id"), view_or_stamp_id, record);
    transaction.commit();
    return record.id;
}

std::string Archive::addAttribution(const std::string& item_id,
                                    const AttributionRecord& attribution)
{
    sql::Transaction transaction(connection_->database, sql::Transaction::Kind::Writing);
    const Entry entry = connection_->entry();
    requireItem(entry.database, item_id);
    const std::string id = saveAttribution(entry, item_id, attribution).id;
    transaction.commit();
    return id;
}

std::string Archive::addStamp(const std::string& item_id, const StampRecord& stamp)
{
    sql::Transaction transaction(connection_->database, sql::Transaction::Kind::Writing);
    const Entry entry = connection_->entry();
    requireItem(entry.database, item_id);
    const PhotoIds photo_ids = photoIdsOf(entry.database, item_id);
    const std::string id = saveStamp(entry, item_id, stamp, photo_ids).id;
    transaction.commit();
    return id;
}

std::optional<ItemRecord> Archive::item(const std::string& id_or_accession_number) const
{
    sql::Database& database = connection_->database;
    sql::Transaction transaction(database, sql::Transaction::Kind::Reading);
    const std::vector<sql::Row> rows =
        database.rows("item", "WHERE id = :wanted OR accession_number = :wanted",
                      {{"wanted", id_or_accession_number}});
    if (rows.empty())
        return std::nullopt;
    return loadItem(database, connection_->folder, rows.front());
}

std::optional<ItemRecord> Archive::lastItem() const
{
    sql::Database& database = connection_->database;
    sql::Transaction transaction(database, sql::Transaction::Kind::Reading);
    const std::vector<sql::Row> rows =
        database.rows("item", "ORDER BY recorded_at DESC, ordinal DESC LIMIT 1");
    if (rows.empty())
        return std::nullopt;
    return loadItem(database, connection_->folder, rows.front());
}

std::vector<std::string> Archive::itemsWithPhoto(const std::string& sha256) const
{
    sql::Database& database = connection_->database;
    sql::Transaction transaction(database, sql::Transaction::Kind::Reading);
    std::vector<std::string> items;
    for (const sql::Row& row : database.rows(
             "item",
             "WHERE id IN (SELECT item_id FROM photo WHERE sha256 = :sha256) ORDER BY ordinal",
             {{"sha256", sha256}})) {
        const std::string number = row.text("accession_number");
        items.push_back(number.empty() ? row.text("id") : number);
    }
    return items;
}

std::filesystem::path Archive::originalPath(const std::string& sha256,
                                            const std::string& original_name) const
{
    const std::vector<sql::Row> known =
        connection_->database.rows("original", "WHERE sha256 = :sha256", {{"sha256", sha256}});
    return originalPathIn(
        connection_->folder, sha256,
        known.empty() ? originalExtension(original_name) : known.front().text("extension"));
}

}  // namespace models
