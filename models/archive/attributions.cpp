#include "models/archive/entry.h"
#include "models/archive/record_names.h"

namespace models {

namespace {

using sql::Row;

void checkSupersededAttribution(const Entry& entry, const std::string& item_id,
                                const std::string& superseded)
{
    if (superseded.empty())
        return;
    if (entry.database
            .rows("attribution", "WHERE id = :id AND item_id = :item_id",
                  {{"id", superseded}, {"item_id", item_id}})
            .empty())
        throw ArchiveError("there is no attribution " + superseded + " of this item in " +
                           entry.database.file().string() +
                           " that could be replaced; look its "
                           "id up in the record");
}

AttributionRecord attributionOf(const Row& row)
{
    AttributionRecord record;
    record.id = row.text("id");
    record.maker_id = row.text("maker_id");
    record.maker_name = row.text("maker_name");
    record.mark = row.text("mark");
    record.register_sha256 = row.text("register_sha256");
    record.date_edtf = row.text("date_edtf");
    const std::optional<Certainty> certainty = certaintyNamed(row.text("certainty"));
    if (!certainty)
        row.refuse("certainty");
    record.certainty = *certainty;
    record.reasons = row.text("reasons");
    record.engine_reasons = row.text("engine_reasons");
    record.supersedes = row.text("supersedes");
    record.recorded_by = row.text("recorded_by");
    record.recorded_at = row.text("recorded_at");
    return record;
}

}  // namespace

AttributionRecord saveAttribution(const Entry& entry, const std::string& item_id,
                                  AttributionRecord record)
{
    checkSupersededAttribution(entry, item_id, record.supersedes);
    record.id = idOrNew(record.id);
    record.recorded_by = entry.author;
    record.recorded_at = entry.now;
    insertAuthored(entry, "attribution",
                   {{"id", record.id},
                    {"item_id", item_id},
                    {"ordinal", nextOrdinal(entry.database, "attribution", "item_id", item_id)},
                    {"maker_id", record.maker_id},
                    {"maker_name", record.maker_name},
                    {"mark", record.mark},
                    {"register_sha256", record.register_sha256},
                    {"date_edtf", record.date_edtf},
                    {"certainty", std::string(nameOf(record.certainty))},
                    {"reasons", record.reasons},
                    {"engine_reasons", record.engine_reasons},
                    {"supersedes", sql::textOrNull(record.supersedes)}});
    return record;
}

std::vector<AttributionRecord> loadAttributions(const sql::Database& database,
                                                const std::string& item_id)
{
    std::vector<AttributionRecord> records;
    for (const Row& row : childRows(database, "attribution", "item_id", item_id))
        records.push_back(attributionOf(row));
    return records;
}

}  // namespace models
