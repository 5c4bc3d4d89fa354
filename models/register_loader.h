#pragma once

#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "models/maker_register.h"
#include "models/register_file.h"

namespace models {

// Reads the files of a register folder one by one, each after those that it refers to, and collects
// what is wrong with them. For loadRegister alone.
class RegisterLoader {
public:
    explicit RegisterLoader(std::filesystem::path folder) : folder_(std::move(folder)) {}

    void load();

    MakerRegister known;
    std::vector<RegisterFault> faults;

private:
    RegisterFile open(const char* name, const ColumnPlan& plan, bool must_be_there);
    void readSources();
    void readMakers();
    void checkSuccessors(const RegisterFile& file);
    void readMarks();
    void readItemTypes();
    void readFeatures();
    void readCodes();
    void checkLeadingZeros(const RegisterFile& file);
    void readSpellings();

    // Field checks; each adds a fault where the field is not what it should be.
    std::string neededText(const RegisterFile& file, const CsvRow& row, const char* column);
    std::string years(const RegisterFile& file, const CsvRow& row, const char* column);
    void yearOrder(const RegisterFile& file, const CsvRow& row, const std::string& from,
                   const std::string& to, const char* column);
    std::string source(const RegisterFile& file, const CsvRow& row);
    std::string makerId(const RegisterFile& file, const CsvRow& row, const char* column);
    std::string freshId(const RegisterFile& file, const CsvRow& row, const char* column);
    Line markLine(const RegisterFile& file, const CsvRow& row, const std::string& text);

    std::filesystem::path folder_;
    bool has_sources_ = false;
    std::map<std::string, std::set<std::string>> ids_;  // seen so far, by the column's name
};

}  // namespace models
