// What else is recorded of an item: dated events, features seen, measurements.
#include "models/archive/entry.h"
#include "models/archive/record_names.h"

namespace models {

namespace {

using sql::Row;

DatedEventRecord datedEventOf(const Row& row)
{
    DatedEventRecord record;
    record.id = row.text("id");
    const std::optional<EventKind> kind = eventKindNamed(row.text("kind"));
    const std::optional<DateBound> bound = dateBoundNamed(row.text("bound"));
    if (!kind)
        row.refuse("kind");
    if (!bound)
        row.refuse("bound");
    record.kind = *kind;
    record.bound = *bound;
    record.printed = row.text("printed");
    record.edtf = row.text("edtf");
    record.first_day = row.text("first_day");
    record.last_day = row.text("last_day");
    record.stamp_id = row.text("stamp_id");
    record.recorded_by = row.text("recorded_by");
    record.recorded_at = row.text("recorded_at");
    return record;
}

}  // namespace

DatedEventRecord saveDatedEvent(const Entry& entry, const std::string& item_id,
                                DatedEventRecord record)
{
    record.id = idOrNew(record.id);
    record.recorded_by = entry.author;
    record.recorded_at = entry.now;
    insertAuthored(entry, "dated_event",
                   {{"id", record.id},
                    {"item_id", item_id},
                    {"ordinal", nextOrdinal(entry.database, "dated_event", "item_id", item_id)},
                    {"kind", std::string(nameOf(record.kind))},
                    {"printed", record.printed},
                    {"edtf", record.edtf},
                    {"first_day", record.first_day},
                    {"last_day", record.last_day},
                    {"bound", std::string(nameOf(record.bound))},
                    {"stamp_id", sql::textOrNull(record.stamp_id)}});
    return record;
}

FeatureSeenRecord saveFeatureSeen(const Entry& entry, const std::string& item_id,
                                  FeatureSeenRecord record)
{
    record.id = idOrNew(record.id);
    record.recorded_by = entry.author;
    record.recorded_at = entry.now;
    insertAuthored(entry, "feature_seen",
                   {{"id", record.id},
                    {"item_id", item_id},
                    {"ordinal", nextOrdinal(entry.database, "feature_seen", "item_id", item_id)},
                    {"feature_id", record.feature_id},
                    {"seen", std::string(nameOf(record.seen))},
                    {"notes", record.notes}});
    return record;
}

MeasurementRecord saveMeasurement(const Entry& entry, const std::string& item_id,
                                  MeasurementRecord record)
{
    record.id = idOrNew(record.id);
    record.recorded_by = entry.author;
    record.recorded_at = entry.now;
    insertAuthored(entry, "measurement",
                   {{"id", record.id},
                    {"item_id", item_id},
                    {"ordinal", nextOrdinal(entry.database, "measurement", "item_id", item_id)},
                    {"what", record.what},
                    {"unit", record.unit},
                    {"how", record.how},
                    {"measured_value", record.value}});
    return record;
}

std::vector<DatedEventRecord> loadDatedEvents(const sql::Database& database,
                                              const std::string& item_id)
{
    std::vector<DatedEventRecord> records;
    for (const Row& row : childRows(database, "dated_event", "item_id", item_id))
        records.push_back(datedEventOf(row));
    return records;
}

std::vector<FeatureSeenRecord> loadFeaturesSeen(const sql::Database& database,
                                                const std::string& item_id)
{
    std::vector<FeatureSeenRecord> records;
    for (const Row& row : childRows(database, "feature_seen", "item_id", item_id)) {
        FeatureSeenRecord record;
        record.id = row.text("id");
        record.feature_id = row.text("feature_id");
        const std::optional<FeatureSeen> seen = featureSeenNamed(row.text("seen"));
        if (!seen)
            row.refuse("seen");
        record.seen = *seen;
        record.notes = row.text("notes");
        record.recorded_by = row.text("recorded_by");
        record.recorded_at = row.text("recorded_at");
        records.push_back(record);
    }
    return records;
}

std::vector<MeasurementRecord> loadMeasurements(const sql::Database& database,
                                                const std::string& item_id)
{
    std::vector<MeasurementRecord> records;
    for (const Row& row : childRows(database, "measurement", "item_id", item_id)) {
        MeasurementRecord record;
        record.id = row.text("id");
        record.what = row.text("what");
        record.unit = row.text("unit");
        record.how = row.text("how");
        record.value = row.real("measured_value");
        record.recorded_by = row.text("recorded_by");
        record.recorded_at = row.text("recorded_at");
        records.push_back(record);
    }
    return records;
}

}  // namespace models
