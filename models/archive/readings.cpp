#include "models/archive/entry.h"
#include "models/archive/record_names.h"
#include "models/archive/stored_readings.h"
#include "models/exchange/reading_json.h"
#include "models/typed_notation.h"

namespace models {

namespace {

using sql::Row;

// A reading corrects one of the same stamp, or its history would lead elsewhere.
void checkSuperseded(const Entry& entry, const std::string& stamp_id, const std::string& superseded)
{
    if (superseded.empty())
        return;
    if (entry.database
            .rows("reading", "WHERE id = :id AND stamp_id = :stamp_id",
                  {{"id", superseded}, {"stamp_id", stamp_id}})
            .empty())
        throw ArchiveError("there is no reading " + superseded + " of this stamp in " +
                           entry.database.file().string() +
                           " that could be corrected; look its "
                           "id up in the record");
}

ReadingRecord recordOf(const sql::Database& database, const Row& row)
{
    ReadingRecord record;
    record.id = row.text("id");
    record.supersedes = row.text("supersedes");
    record.recorded_by = row.text("recorded_by");
    record.recorded_at = row.text("recorded_at");
    const std::optional<Basis> basis = basisNamed(row.text("basis"));
    if (!basis)
        row.refuse("basis");
    record.reading.basis = *basis;
    record.reading.reader = row.text("reader");
    record.reading.read_at = row.text("read_at");
    record.reading.candidates_were_shown = row.flagOrNone("candidates_were_shown");
    record.reading.layer = row.text("layer");
    record.reading.options = row.text("options");
    record.reading.weights_sha256 = row.text("weights_sha256");
    record.reading.lines = storedLines(database, row);
    return record;
}

}  // namespace

std::vector<Line> storedLines(const sql::Database& database, const Row& reading)
{
    const std::vector<Row> rows =
        database.rows("reading_lines", "WHERE reading_id = :id", {{"id", reading.text("id")}});
    if (rows.empty())
        reading.refuse("lines");
    try {
        return linesFromJsonText(rows.front().text("lines_json"));
    } catch (const ExchangeError& error) {
        throw ArchiveError(database.sentence(sql::Trouble::Damaged, error.what()));
    }
}

ReadingRecord saveReading(const Entry& entry, const std::string& stamp_id,
                          const std::string& view_id, ReadingRecord record)
{
    checkSuperseded(entry, stamp_id, record.supersedes);
    record.id = idOrNew(record.id);
    record.recorded_by = entry.author;
    record.recorded_at = entry.now;
    const Reading& reading = record.reading;
    insertAuthored(entry, "reading",
                   {{"id", record.id},
                    {"stamp_id", stamp_id},
                    {"view_id", sql::textOrNull(view_id)},
                    {"ordinal", nextOrdinal(entry.database, "reading", "stamp_id", stamp_id)},
                    {"reader", reading.reader},
                    {"basis", std::string(nameOf(reading.basis))},
                    {"read_at", reading.read_at},
                    {"candidates_were_shown", sql::flagOrNull(reading.candidates_were_shown)},
                    {"layer", reading.layer},
                    {"options", reading.options},
                    {"weights_sha256", reading.weights_sha256},
                    {"typed", writeTyped(reading.lines)},
                    {"supersedes", sql::textOrNull(record.supersedes)}});
    entry.database.insert("reading_lines", {{"reading_id", record.id},
                                            {"lines_json", linesToJsonText(reading.lines)}});
    return record;
}

std::vector<StoredReading> loadReadings(const sql::Database& database, const std::string& stamp_id)
{
    std::vector<StoredReading> readings;
    for (const Row& row : childRows(database, "reading", "stamp_id", stamp_id))
        readings.push_back({row.text("view_id"), recordOf(database, row)});
    return readings;
}

}  // namespace models
