#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "models/archive/dialect.h"
#include "models/archive/sql_row.h"

namespace models::sql {

// One connection to an archive's database file. Use it only in the thread that made it. Every
// method throws ArchiveError, one sentence with the file and the remedy.
class Database {
public:
    // Opens the file; it is made if missing.
    explicit Database(const std::filesystem::path& file);
    ~Database();
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;

    void execute(const std::string& sql);

    // Rows of a statement; `named` fills its :placeholders.
    std::vector<Row> select(const std::string& sql, const std::vector<Field>& named = {}) const;

    // Rows of one table, with `clause` after it ("WHERE item_id = :id ORDER BY ordinal"). Each
    // row's sum is checked.
    std::vector<Row> rows(const std::string& table, const std::string& clause = {},
                          const std::vector<Field>& named = {}) const;

    // Adds a row; its sum is added to it.
    void insert(const std::string& table, const std::vector<Field>& fields);

    // The sentence for what went wrong with this file.
    std::string sentence(Trouble trouble, const std::string& detail = {}) const;

    const std::filesystem::path& file() const { return file_; }

private:
    std::filesystem::path file_;
    std::string name_;  // of the connection
};

// A transaction that is rolled back unless commit() was called.
class Transaction {
public:
    enum class Kind { Reading, Writing };
    Transaction(Database& database, Kind kind);
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;

    void commit();

private:
    Database& database_;
    bool open_ = true;
};

}  // namespace models::sql
