#include "models/archive/database.h"

#include <atomic>
#include <utility>

#include <QSqlDatabase>
#include <QSqlError>
#include <QSqlQuery>
#include <QSqlRecord>
#include <QString>
#include <QVariant>

#include "models/archive/archive.h"

namespace models::sql {

namespace {

QString toQt(const std::string& text)
{
    const QString converted = QString::fromStdString(text);
    return converted.isNull() ? QString("") : converted;  // a null string would be stored as NULL
}

QVariant toQt(const Value& value)
{
    if (const auto* text = std::get_if<std::string>(&value))
        return toQt(*text);
    if (const auto* whole = std::get_if<std::int64_t>(&value))
        return static_cast<qlonglong>(*whole);
    if (const auto* real = std::get_if<double>(&value))
        return *real;
    return {};
}

Value fromQt(const QVariant& value)
{
    if (value.isNull())
        return {};
    switch (value.typeId()) {
        case QMetaType::LongLong:
        case QMetaType::Int:
            return std::int64_t{value.toLongLong()};
        case QMetaType::Double:
            return value.toDouble();
        default:
            return value.toString().toStdString();
    }
}

// Text as the database will give it back: what is not UTF-8 becomes U+FFFD before it is summed.
std::vector<Field> storable(std::vector<Field> fields)
{
    for (Field& field : fields)
        if (auto* text = std::get_if<std::string>(&field.value))
            *text = toQt(*text).toStdString();
    return fields;
}

std::string newConnectionName()
{
    static std::atomic<unsigned> count{0};
    return "weftmark archive " + std::to_string(++count);
}

Trouble troubleWith(const QSqlError& error)
{
    return sql::troubleOf(error.nativeErrorCode().toStdString(),
                          error.databaseText().toStdString());
}

Row rowAt(const QSqlQuery& query, const QSqlRecord& columns, const std::string& file)
{
    std::vector<Field> fields;
    for (int i = 0; i < columns.count(); ++i)
        fields.push_back({columns.fieldName(i).toStdString(), fromQt(query.value(i))});
    return Row(std::move(fields), file);
}

}  // namespace

Database::Database(const std::filesystem::path& file) : file_(file), name_(newConnectionName())
{
    if (toQt(file.string()).toStdString() != file.string())
        throw ArchiveError("the archive's folder has a name that is not UTF-8; rename it: " +
                           toQt(file.string()).toStdString());
    QString message;
    Trouble trouble = Trouble::Other;
    bool opened = false;
    {
        QSqlDatabase connection = QSqlDatabase::addDatabase(driverName(), toQt(name_));
        connection.setDatabaseName(toQt(file.string()));
        connection.setConnectOptions(toQt(connectOptions()));
        opened = connection.open();
        message = connection.lastError().text();
        trouble = troubleWith(connection.lastError());
    }
    if (!opened) {
        QSqlDatabase::removeDatabase(toQt(name_));
        throw ArchiveError(sentence(trouble, message.toStdString()));
    }
    try {
        for (const std::string& setting : connectionSettings())
            execute(setting);
    } catch (...) {
        QSqlDatabase::removeDatabase(toQt(name_));
        throw;
    }
}

Database::~Database()
{
    QSqlDatabase::removeDatabase(toQt(name_));
}

void Database::execute(const std::string& sql)
{
    select(sql);
}

std::vector<Row> Database::select(const std::string& sql, const std::vector<Field>& named) const
{
    QSqlQuery query(QSqlDatabase::database(toQt(name_), false));
    query.setForwardOnly(true);
    bool done = query.prepare(toQt(sql));
    if (done) {
        for (const Field& field : named)
            query.bindValue(toQt(":" + field.column), toQt(field.value));
        done = query.exec();
    }
    std::vector<Row> rows;
    const QSqlRecord columns = query.record();
    while (done && query.next())
        rows.push_back(rowAt(query, columns, file_.string()));
    if (query.lastError().isValid())
        throw ArchiveError(sentence(troubleWith(query.lastError()),
                                    query.lastError().databaseText().toStdString()));
    return rows;
}

std::vector<Row> Database::rows(const std::string& table, const std::string& clause,
                                const std::vector<Field>& named) const
{
    std::vector<Row> rows = select("SELECT * FROM " + table + " " + clause, named);
    for (const Row& row : rows)
        if (row.text("row_sum") != rowSum(row.fields()))
            throw ArchiveError(sentence(Trouble::Damaged, "a row of '" + table + "' has changed"));
    return rows;
}

void Database::insert(const std::string& table, const std::vector<Field>& fields)
{
    std::vector<Field> stored = storable(fields);
    stored.push_back({"row_sum", rowSum(stored)});
    std::string columns, places;
    for (const Field& field : stored) {
        columns += (columns.empty() ? "" : ", ") + field.column;
        places += (places.empty() ? ":" : ", :") + field.column;
    }
    select("INSERT INTO " + table + " (" + columns + ") VALUES (" + places + ")", stored);
}

std::string Database::sentence(Trouble trouble, const std::string& detail) const
{
    const std::string name = file_.string();
    const std::string said = detail.empty() ? "" : " (" + detail + ")";
    switch (trouble) {
        case Trouble::Locked:
            return name + " is in use by another program; close it there and try again";
        case Trouble::Damaged:
            return name + " is damaged" + said +
                   "; work on with a copy of it from your backup, the originals beside it are not "
                   "touched";
        case Trouble::NotDatabase:
            return name + " is not a Weftmark archive; move that file away or name another folder";
        case Trouble::Full:
            return name + " cannot be read or written, the disk may be full or failing" + said +
                   "; free some room and try again, nothing was stored";
        case Trouble::ReadOnly:
            return name +
                   " may not be written; allow writing to it and its folder, or name "
                   "another folder";
        case Trouble::CannotOpen:
            return name + " cannot be opened; check that its folder is there and may be written";
        case Trouble::Duplicate:
            return name + " has a record of that number already" + said + "; give another number";
        case Trouble::Missing:
            return name + " has no record that this belongs to" + said + "; file the item first";
        case Trouble::Other:
            break;
    }
    return name + " could not do it" + said +
           "; if the file was changed by hand, restore it from "
           "your backup";
}

Transaction::Transaction(Database& database, Kind kind) : database_(database)
{
    database_.execute(kind == Kind::Writing ? beginWriting() : beginReading());
}

Transaction::~Transaction()
{
    if (!open_)
        return;
    try {
        database_.execute("ROLLBACK");
    } catch (const ArchiveError&) {
        // The database has rolled back by itself, or does so when it is next opened.
    }
}

void Transaction::commit()
{
    database_.execute("COMMIT");
    open_ = false;
}

}  // namespace models::sql
