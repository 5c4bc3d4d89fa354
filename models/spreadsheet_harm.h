#pragma once

#include <optional>
#include <string>

#include "models/csv_table.h"

// What spreadsheets and editors do to a register, recognised so that it can be named.
namespace models {

struct Harm {
    std::string problem, remedy;
};

// A field's text as a sentence shows it: 'text'.
std::string inQuotes(const std::string& text);

// A file that is not UTF-8, or was written through a wrong encoding, with the line of the first
// sign of it.
std::optional<CsvFault> encodingHarm(const std::string& text);

// A short text, such as a mark or a code, that was turned into a date (3/40 into "Mar-40" or
// "01.03.1940", 3/4 into "03-Apr"), into a number in powers of ten, or into an error sign.
std::optional<Harm> markHarm(const std::string& field);

// A field that holds nothing but a spreadsheet's error sign (#NAME?, ####).
std::optional<Harm> errorSignHarm(const std::string& field);

// Why a field is not EDTF, as far as it can be guessed: "c. 1930", "1930s", "1930-1935",
// "01/01/1930", "1930.0". Always an answer, with a remedy.
Harm yearHarm(const std::string& field);

}  // namespace models
