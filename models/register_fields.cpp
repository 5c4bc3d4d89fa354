#include <algorithm>

#include "models/edtf.h"
#include "models/register_loader.h"
#include "models/spreadsheet_harm.h"
#include "models/typed_notation.h"

// How RegisterLoader checks single fields.
namespace models {

namespace {

std::vector<std::string> splitList(const std::string& text)
{
    std::vector<std::string> parts;
    std::string part;
    for (const char c : text + "|") {
        if (c != '|') {
            part += c;
        } else if (!part.empty()) {
            parts.push_back(part);
            part.clear();
        }
    }
    return parts;
}

std::string withoutZeros(const std::string& id)
{
    const std::size_t first = id.find_first_not_of('0');
    return first == std::string::npos ? std::string() : id.substr(first);
}

}  // namespace

std::string RegisterLoader::neededText(const RegisterFile& file, const CsvRow& row,
                                       const char* column)
{
    std::string text = file.field(row, column);
    if (text.empty())
        faults.push_back(file.fault(row, column, "the field is empty", "fill it in"));
    else
        plainField(file, row, column);
    return text;
}

void RegisterLoader::tellHarm(const RegisterFile& file, const CsvRow& row, const char* column,
                              const std::optional<Harm>& harm)
{
    if (harm)
        faults.push_back(file.fault(row, column, harm->problem, harm->remedy));
}

// A short text of its own, in which a date or a number is what a spreadsheet made of it.
std::string RegisterLoader::plainField(const RegisterFile& file, const CsvRow& row,
                                       const char* column)
{
    std::string text = file.field(row, column);
    tellHarm(file, row, column, markHarm(text));
    return text;
}

// Free words: a date may be meant, an error sign never is.
std::string RegisterLoader::noteField(const RegisterFile& file, const CsvRow& row,
                                      const char* column)
{
    std::string text = file.field(row, column);
    tellHarm(file, row, column, errorSignHarm(text));
    return text;
}

std::vector<std::string> RegisterLoader::listField(const RegisterFile& file, const CsvRow& row,
                                                   const char* column)
{
    std::vector<std::string> parts = splitList(file.field(row, column));
    for (const std::string& part : parts)
        tellHarm(file, row, column, markHarm(part));
    return parts;
}

std::string RegisterLoader::freshId(const RegisterFile& file, const CsvRow& row, const char* column)
{
    std::string id = neededText(file, row, column);
    if (!id.empty() && !ids_[column].insert(id).second)
        faults.push_back(
            file.fault(row, column, inQuotes(id) + " stands there twice", "give each its own"));
    if (std::string(column) != "source_id" && id.find_first_of(" \t\r\n") != std::string::npos)
        faults.push_back(file.fault(row, column, "the id " + inQuotes(id) + " holds a blank",
                                    "an id is short and without blanks; write a hyphen instead"));
    ids_without_zeros_[column].emplace(withoutZeros(id), id);
    return id;
}

std::string RegisterLoader::years(const RegisterFile& file, const CsvRow& row, const char* column)
{
    std::string text = file.field(row, column);
    const bool has_time = text.find('T') != std::string::npos;  // EDTF, but no year was so meant
    if (!text.empty() && (has_time || !edtfYearBounds(text))) {
        tellHarm(file, row, column, yearHarm(text));
        text.clear();
    }
    return text;
}

void RegisterLoader::yearOrder(const RegisterFile& file, const CsvRow& row, const std::string& from,
                               const std::string& to, const char* column)
{
    const auto first = from.empty() ? std::nullopt : edtfYearBounds(from);
    const auto last = to.empty() ? std::nullopt : edtfYearBounds(to);
    if (first && last && first->first && last->last && *first->first > *last->last)
        faults.push_back(file.fault(row, column, to + " lies before " + from,
                                    "the first year must not be after the last"));
}

void RegisterLoader::checkReference(const RegisterFile& file, const CsvRow& row, const char* column,
                                    const Reference& reference)
{
    const std::string id = file.field(row, column);
    if (ids_[reference.id_column].count(id) != 0)
        return;
    const auto& listed = ids_without_zeros_[reference.id_column];
    const auto alike = id.empty() ? listed.end() : listed.find(withoutZeros(id));
    const std::string problem =
        std::string("the ") + reference.what + " " + inQuotes(id) + " is not in " + reference.file;
    faults.push_back(file.fault(
        row, column, problem,
        alike == listed.end() ? "add it there or correct it here"
                              : inQuotes(alike->second) +
                                    " is there: a spreadsheet may have dropped zeros in front"));
}

std::string RegisterLoader::source(const RegisterFile& file, const CsvRow& row)
{
    std::string id = file.field(row, "source_id");
    if (known.has_source_list && !sources_unread_ && !id.empty())
        checkReference(file, row, "source_id", {"source_id", "source", "sources.csv"});
    return id;
}

std::string RegisterLoader::makerId(const RegisterFile& file, const CsvRow& row, const char* column)
{
    if (!makers_unread_)
        checkReference(file, row, column, {"maker_id", "maker", "makers.csv"});
    return file.field(row, column);
}

Line RegisterLoader::markLine(const RegisterFile& file, const CsvRow& row, const std::string& text)
{
    if (const auto harm = markHarm(text)) {
        tellHarm(file, row, "text", harm);
        return {};
    }
    const ParsedNotation parsed = parseTyped(text);
    if (parsed.fault) {
        faults.push_back(file.fault(row, "text",
                                    "the mark " + inQuotes(text) +
                                        " is not in the typed notation: at character " +
                                        std::to_string(parsed.fault->position + 1) +
                                        " should stand " + parsed.fault->expected,
                                    "correct it there"));
        return {};
    }
    const bool has_letters =
        parsed.lines.size() == 1 && std::any_of(parsed.lines[0].cells.begin(),
                                                parsed.lines[0].cells.end(), [](const Cell& cell) {
                                                    return !cell.alternatives.empty() &&
                                                           cell.alternatives[0].text != " ";
                                                });
    if (parsed.lines.size() != 1 || !has_letters) {
        faults.push_back(file.fault(row, "text", "a mark is one line with at least one letter",
                                    "write one line; a slash itself has no spaces round it"));
        return {};
    }
    return parsed.lines.front();
}

}  // namespace models
