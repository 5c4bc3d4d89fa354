#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace models {

struct CsvRow {
    std::size_t line = 0;             // where it begins, 1-based, as an editor counts
    std::vector<std::string> fields;  // as many as the header has
};

struct CsvFault {
    std::size_t line = 0;  // 0 for the file as a whole
    std::string column;    // its name in the header; empty for the line as a whole
    std::string problem, remedy;
};

struct CsvTable {
    std::vector<std::string> header;
    std::size_t header_line = 1;
    char separator = ',';          // that parts the fields
    std::vector<CsvRow> rows;      // those that could be read
    std::vector<CsvFault> faults;  // those that could not, and what is wrong with the file
};

// Reads comma-separated text after RFC 4180: quotes round a field that holds the separator, a
// quote or a line break; a quote inside doubled. The separator is a comma, a semicolon or a tab,
// told from the header (or from a line "sep=;" that some spreadsheets write before it). A byte
// order mark is let pass, line ends may be LF, CRLF or CR, empty lines are left out, blanks round a
// field are cut off. Text that is not UTF-8, or that has been through a wrong encoding, is a fault,
// never a guess. Never throws on foreign text.
CsvTable readCsv(const std::string& text);

}  // namespace models
