#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "models/csv_table.h"
#include "models/maker_register.h"
#include "models/register_tables.h"

namespace models {

// One file of the register, its fields by the names of their columns.
class RegisterFile {
public:
    // Reads it; what is wrong goes to faults(). A file that is missing has no rows and no faults.
    RegisterFile(std::filesystem::path file, const ColumnPlan& plan);

    // The same with a text that the file does not hold yet.
    RegisterFile(std::filesystem::path file, const std::string& text, const ColumnPlan& plan);

    bool isThere() const { return is_there_; }
    const std::filesystem::path& path() const { return file_; }
    const std::vector<CsvRow>& rows() const { return table_.rows; }
    const std::vector<RegisterFault>& faults() const { return faults_; }
    const CsvTable& table() const { return table_; }  // column names in small letters

    // Empty when the file has no such column.
    std::string field(const CsvRow& row, const std::string& column) const;

    RegisterFault fault(const CsvRow& row, std::string column, std::string problem,
                        std::string remedy) const;

private:
    void take(const std::string& text, const ColumnPlan& plan);
    void checkHeader(const ColumnPlan& plan);

    std::filesystem::path file_;
    bool is_there_ = false;
    CsvTable table_;
    std::map<std::string, std::size_t> columns_;
    std::vector<RegisterFault> faults_;
};

}  // namespace models
