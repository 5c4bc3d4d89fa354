#include "models/archive/schema.h"

#include <vector>

#include "models/archive/archive.h"
#include "models/archive/schema_steps.h"

namespace models::sql {

namespace {

std::int64_t onlyNumber(const Database& database, const std::string& sql)
{
    const std::vector<Row> rows = database.select(sql);
    if (rows.size() != 1 || rows.front().fields().empty())
        throw ArchiveError(database.sentence(Trouble::NotDatabase));
    return rows.front().whole(rows.front().fields().front().column);
}

void checkIntegrity(const Database& database)
{
    const std::vector<Row> rows = database.select(integrityCheck());
    const Row& first = rows.at(0);
    const std::string said = first.text(first.fields().at(0).column);
    if (said != "ok")
        throw ArchiveError(database.sentence(Trouble::Damaged, said));
}

// A sum over all tables as they are declared, so that a changed declaration is noticed.
std::string schemaSum(const Database& database)
{
    std::vector<Field> declared;
    for (const Row& row : database.select(schemaListing()))
        declared.push_back({row.text("type") + " " + row.text("name") + " " + row.text("tbl_name"),
                            row.text("sql")});
    return rowSum(declared);
}

void checkSchema(const Database& database, std::int64_t version)
{
    const std::vector<Row> steps = database.rows("schema_version", "ORDER BY version DESC");
    if (steps.empty() || steps.front().whole("version") != version)
        throw ArchiveError(database.sentence(Trouble::Damaged, "its version is not settled"));
    if (steps.front().text("schema_sum") != schemaSum(database))
        throw ArchiveError(database.sentence(Trouble::Damaged, "its tables have changed"));
}

void migrate(Database& database, std::int64_t version, const std::string& now)
{
    for (std::int64_t step = version + 1; step <= schema_version; ++step) {
        for (const std::string& statement : schemaStep(static_cast<int>(step)))
            database.execute(statement);
        database.insert(
            "schema_version",
            {{"version", step}, {"migrated_at", now}, {"schema_sum", schemaSum(database)}});
    }
    for (const std::string& statement : writeFileVersion(schema_version))
        database.execute(statement);
}

void refuseNewer(const Database& database, std::int64_t version)
{
    if (version > schema_version)
        throw ArchiveError(database.file().string() +
                           " was written by a newer Weftmark (its "
                           "version is " +
                           std::to_string(version) + ", this one knows up to " +
                           std::to_string(schema_version) + "); update Weftmark to open it");
}

}  // namespace

void prepareSchema(Database& database, const std::string& now)
{
    const bool is_new = database.select(schemaListing()).empty();
    const std::int64_t version = onlyNumber(database, readFileVersion());
    if (!is_new) {
        if (onlyNumber(database, readFileOwner()) != fileOwner())
            throw ArchiveError(database.sentence(Trouble::NotDatabase));
        refuseNewer(database, version);
        checkIntegrity(database);
        if (version == schema_version)
            return checkSchema(database, version);
    }
    Transaction transaction(database, Transaction::Kind::Writing);
    if (database.select(schemaListing()).empty() == is_new)  // else: made by another just now
        migrate(database, is_new ? 0 : version, now);
    transaction.commit();
}

}  // namespace models::sql
