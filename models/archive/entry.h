#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "models/archive/archive.h"
#include "models/archive/database.h"
#include "models/archive/originals.h"
#include "models/archive/records.h"

// How records become rows and rows records, one part of a record at a time. Saving answers the
// record as stored; the caller holds the transaction.
namespace models {

// What every saved row needs.
struct Entry {
    sql::Database& database;
    const std::filesystem::path& folder;
    std::string author, now;
};

// A photo's id by its hash, within one item.
using PhotoIds = std::map<std::string, std::string>;

// The given id, or a new UUID if it is empty.
std::string idOrNew(const std::string& id);

// Inserts with author and time.
void insertAuthored(const Entry& entry, const std::string& table, std::vector<sql::Field> fields);

// One more than the highest `ordinal` among the rows where `column` is `value`.
std::int64_t nextOrdinal(const sql::Database& database, const std::string& table,
                         const std::string& column, const std::string& value);

// Rows of a table that belong to a parent, in the order of recording.
std::vector<sql::Row> childRows(const sql::Database& database, const std::string& table,
                                const std::string& column, const std::string& value);

// Of the photos that the item has.
PhotoIds photoIdsOf(const sql::Database& database, const std::string& item_id);

// Throws ArchiveError, which tells the remedy, unless there is an item of this id.
void requireItem(const sql::Database& database, const std::string& id);

// The whole record of a row of `item`.
ItemRecord loadItem(const sql::Database& database, const std::filesystem::path& folder,
                    const sql::Row& row);

PhotoRecord savePhoto(const Entry& entry, const std::string& item_id, PhotoRecord photo,
                      OriginalsCopy& originals);
StampRecord saveStamp(const Entry& entry, const std::string& item_id, StampRecord stamp,
                      const PhotoIds& photo_ids);
// `view_id` is empty for a reading of the object itself.
ReadingRecord saveReading(const Entry& entry, const std::string& stamp_id,
                          const std::string& view_id, ReadingRecord reading);
AttributionRecord saveAttribution(const Entry& entry, const std::string& item_id,
                                  AttributionRecord attribution);
DatedEventRecord saveDatedEvent(const Entry& entry, const std::string& item_id,
                                DatedEventRecord event);
FeatureSeenRecord saveFeatureSeen(const Entry& entry, const std::string& item_id,
                                  FeatureSeenRecord feature);
MeasurementRecord saveMeasurement(const Entry& entry, const std::string& item_id,
                                  MeasurementRecord measurement);

std::vector<PhotoRecord> loadPhotos(const sql::Database& database,
                                    const std::filesystem::path& folder,
                                    const std::string& item_id);
std::vector<StampRecord> loadStamps(const sql::Database& database, const std::string& item_id);
std::vector<AttributionRecord> loadAttributions(const sql::Database& database,
                                                const std::string& item_id);
std::vector<DatedEventRecord> loadDatedEvents(const sql::Database& database,
                                              const std::string& item_id);
std::vector<FeatureSeenRecord> loadFeaturesSeen(const sql::Database& database,
                                                const std::string& item_id);
std::vector<MeasurementRecord> loadMeasurements(const sql::Database& database,
                                                const std::string& item_id);

}  // namespace models
