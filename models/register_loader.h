#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <utility>
#include <vector>

#include "models/maker_register.h"
#include "models/register_file.h"
#include "models/spreadsheet_harm.h"

namespace models {

// The text that a file would have; no name, no file.
struct PendingFile {
    std::string name, text;
};

// What the ids in a field name.
struct Reference {
    const char* id_column;  // in the file that lists them
    const char* what;       // "maker"
    const char* file;       // "makers.csv"
};

// Reads the files of a register folder one by one, each after those that it refers to, and collects
// what is wrong with them. For loadRegister alone.
class RegisterLoader {
public:
    // One file, by its name, can be given a text that it does not hold yet.
    explicit RegisterLoader(std::filesystem::path folder, PendingFile pending = {})
        : folder_(std::move(folder)), pending_(std::move(pending))
    {
    }

    void load();

    MakerRegister known;
    std::vector<RegisterFault> faults;

private:
    RegisterFile open(const char* name);
    static bool isUnread(const RegisterFile& file);
    void readSources();
    void readMakers();
    void checkSuccessors(const RegisterFile& file);
    void readMarks();
    Mark readMark(const RegisterFile& file, const CsvRow& row);
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
    void tellHarm(const RegisterFile& file, const CsvRow& row, const char* column,
                  const std::optional<Harm>& harm);
    std::string plainField(const RegisterFile& file, const CsvRow& row, const char* column);
    std::string noteField(const RegisterFile& file, const CsvRow& row, const char* column);
    std::vector<std::string> listField(const RegisterFile& file, const CsvRow& row,
                                       const char* column);
    void checkReference(const RegisterFile& file, const CsvRow& row, const char* column,
                        const Reference& reference);
    std::string makerId(const RegisterFile& file, const CsvRow& row, const char* column);
    std::string freshId(const RegisterFile& file, const CsvRow& row, const char* column);
    Line markLine(const RegisterFile& file, const CsvRow& row, const std::string& text);

    std::filesystem::path folder_;
    PendingFile pending_;
    // A file that cannot be read lists no ids: none is then missed.
    bool makers_unread_ = false, sources_unread_ = false, types_unread_ = false;
    std::map<std::string, std::unordered_set<std::string>>
        ids_;  // seen so far, by the column's name
    std::map<std::string, std::unordered_map<std::string, std::string>> ids_without_zeros_;
};

}  // namespace models
