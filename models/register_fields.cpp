#include <algorithm>

#include "models/edtf.h"
#include "models/register_loader.h"
#include "models/spreadsheet_harm.h"
#include "models/typed_notation.h"

// How RegisterLoader checks single fields.
namespace models {

namespace {

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
    return text;
}

std::string RegisterLoader::freshId(const RegisterFile& file, const CsvRow& row, const char* column)
{
    std::string id = neededText(file, row, column);
    if (!id.empty() && !ids_[column].insert(id).second)
        faults.push_back(
            file.fault(row, column, inQuotes(id) + " stands there twice", "give each its own"));
    return id;
}

std::string RegisterLoader::years(const RegisterFile& file, const CsvRow& row, const char* column)
{
    std::string text = file.field(row, column);
    if (!text.empty() && !edtfYearBounds(text)) {
        const Harm harm = yearHarm(text);
        faults.push_back(file.fault(row, column, harm.problem, harm.remedy));
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

std::string RegisterLoader::source(const RegisterFile& file, const CsvRow& row)
{
    std::string id = file.field(row, "source_id");
    if (has_sources_ && !id.empty() && ids_["source_id"].count(id) == 0)
        faults.push_back(file.fault(row, "source_id",
                                    "the source " + inQuotes(id) + " is not in sources.csv",
                                    "add it there or correct it here"));
    return id;
}

std::string RegisterLoader::makerId(const RegisterFile& file, const CsvRow& row, const char* column)
{
    std::string id = file.field(row, column);
    if (ids_["maker_id"].count(id) != 0)
        return id;
    std::string remedy = "add it there or correct it here";
    for (const std::string& other : ids_["maker_id"])
        if (!id.empty() && withoutZeros(other) == withoutZeros(id))
            remedy = inQuotes(other) + " is there: a spreadsheet may have dropped zeros in front";
    faults.push_back(
        file.fault(row, column, "the maker " + inQuotes(id) + " is not in makers.csv", remedy));
    return id;
}

Line RegisterLoader::markLine(const RegisterFile& file, const CsvRow& row, const std::string& text)
{
    if (const auto harm = markHarm(text)) {
        faults.push_back(file.fault(row, "text", harm->problem, harm->remedy));
        return {};
    }
    const ParsedNotation parsed = parseTyped(text);
    if (parsed.fault) {
        faults.push_back(file.fault(row, "text",
                                    "the mark " + inQuotes(text) +
                                        " is not in the typed notation: " + parsed.fault->message(),
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
