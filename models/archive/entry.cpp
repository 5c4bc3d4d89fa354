#include "models/archive/entry.h"

#include <utility>

#include <QUuid>

namespace models {

std::string idOrNew(const std::string& id)
{
    return id.empty() ? QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString() : id;
}

void insertAuthored(const Entry& entry, const std::string& table, std::vector<sql::Field> fields)
{
    fields.push_back({"recorded_by", entry.author});
    fields.push_back({"recorded_at", entry.now});
    entry.database.insert(table, fields);
}

std::int64_t nextOrdinal(const sql::Database& database, const std::string& table,
                         const std::string& column, const std::string& value)
{
    const std::string where = column.empty() ? "" : " WHERE " + column + " = :value";
    std::vector<sql::Field> named;
    if (!column.empty())
        named.push_back({"value", value});
    return database
        .select("SELECT COALESCE(MAX(ordinal), 0) + 1 AS next_ordinal FROM " + table + where, named)
        .at(0)
        .whole("next_ordinal");
}

std::vector<sql::Row> childRows(const sql::Database& database, const std::string& table,
                                const std::string& column, const std::string& value)
{
    return database.rows(table, "WHERE " + column + " = :parent ORDER BY ordinal",
                         {{"parent", value}});
}

PhotoIds photoIdsOf(const sql::Database& database, const std::string& item_id)
{
    PhotoIds ids;
    for (const sql::Row& row : childRows(database, "photo", "item_id", item_id))
        ids[row.text("sha256")] = row.text("id");
    return ids;
}

void requireItem(const sql::Database& database, const std::string& id)
{
    if (database.rows("item", "WHERE id = :id", {{"id", id}}).empty())
        throw ArchiveError("there is no item " + id + " in " + database.file().string() +
                           "; look its id up with find");
}

}  // namespace models
