#pragma once

#include <cstddef>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

#include "models/item_type.h"
#include "models/reading.h"

namespace models {

// A firm. Years are EDTF strings, as written; empty when unknown.
struct Maker {
    std::string maker_id, name, place;
    std::string from, to;
    std::string successor_of;  // another maker's id, or empty
    std::string notes, source_id;
    std::size_t file_line = 0;  // of makers.csv, 1-based; 0 when it was read from none
};

enum class MarkKind { Text, Code, Device };
enum class MarkFrame { None, Box, Oval, Round, Diamond };

// One text by which a maker signed.
struct Mark {
    std::string maker_id;
    std::string text;  // the typed notation
    Line line;         // `text` parsed
    MarkKind kind = MarkKind::Text;
    MarkFrame frame = MarkFrame::None;
    std::string from, to;
    std::string notes, source_id;
    std::size_t file_line = 0;  // of marks.csv; so for those below
};

enum class CodeMeaning { Maker, Year, Quarter, Inspector };

struct Code {
    std::string code;
    CodeMeaning stands_for = CodeMeaning::Maker;
    std::string value, issuer, from, to, notes, source_id;
    std::size_t file_line = 0;
};

// Two ways to write one thing on a mark: LTD and LIMITED.
struct Spelling {
    std::string text, same_as;
    std::size_t file_line = 0;
};

struct Source {
    std::string source_id, citation;
    std::size_t file_line = 0;
};

struct MakerRegister {
    std::vector<Maker> makers;
    std::vector<Mark> marks;
    std::vector<ItemType> item_types;
    std::vector<Feature> features;
    std::vector<Code> codes;
    std::vector<Spelling> spellings;
    std::vector<Source> sources;
    bool has_source_list = false;  // sources.csv is there, be it without a line

    // nullptr when there is none of that id.
    const Maker* maker(const std::string& maker_id) const;
    const ItemType* itemType(const std::string& type_id) const;
    const Feature* feature(const std::string& feature_id) const;
};

// One thing wrong in a register file.
struct RegisterFault {
    std::filesystem::path file;
    std::size_t line = 0;  // 1-based, as an editor counts; 0 for the file as a whole
    std::string column;    // the column's name; empty for the line as a whole
    std::string problem;   // "the year '19300' is not EDTF"
    std::string remedy;    // "write four digits, such as 1930"

    // "makers.csv, line 4, column from: the year ... ; write ..."
    std::string message() const;
};

// Thrown when a register cannot be read; what() joins the first faults' messages.
class RegisterError : public std::runtime_error {
public:
    explicit RegisterError(std::vector<RegisterFault> faults);
    const std::vector<RegisterFault>& faults() const { return faults_; }

private:
    std::vector<RegisterFault> faults_;
};

// The fault of a folder that is none, or not there.
RegisterFault notAFolder(const std::filesystem::path& folder);

// Reads a register folder (the CSV files of DEVELOPERS.md; UTF-8 with or without BOM; comma,
// semicolon or tab, told from the header). makers.csv and marks.csv must be there; the others may
// be missing. All faults are collected before it throws RegisterError.
MakerRegister loadRegister(const std::filesystem::path& folder);

}  // namespace models
