#include "models/register_append.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <optional>
#include <random>
#include <set>
#include <system_error>

#include "models/csv_table.h"
#include "models/letters.h"
#include "models/open_file.h"
#include "models/register_file.h"
#include "models/spreadsheet_harm.h"

namespace models {

namespace {

using Fields = std::map<std::string, std::string>;

std::optional<std::string> bytesOf(const std::filesystem::path& file)
{
    std::ifstream stream(file, std::ios::binary);
    std::string text{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
    return stream.is_open() && !stream.bad() ? std::optional(text) : std::nullopt;
}

std::string withoutBlanks(const std::string& text)
{
    const std::size_t first = text.find_first_not_of(" \t");
    if (first == std::string::npos)
        return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::string joinedColumns(const RegisterTable& table)
{
    std::string header;
    for (const auto& names : {table.columns.required, table.columns.optional})
        for (const std::string& name : names)
            header.append(header.empty() ? "" : ",").append(name);
    return header;
}

// The first line's end: LF, CR LF or CR; LF when there is none.
std::string lineEndOf(const std::string& text)
{
    const std::size_t at = text.find_first_of("\r\n");
    if (at == std::string::npos || text[at] == '\n')
        return "\n";
    return text.compare(at, 2, "\r\n") == 0 ? "\r\n" : "\r";
}

// Whether the last line that is not empty has every field in quotes.
bool quotesAll(const std::string& text, char separator)
{
    const std::size_t last = text.find_last_not_of("\r\n");
    if (last == std::string::npos || text[last] != '"')
        return false;
    const std::size_t before = text.find_last_of("\r\n", last);
    bool in_quotes = false, at_start = true;
    for (std::size_t i = before == std::string::npos ? 0 : before + 1; i <= last; ++i) {
        if (at_start && text[i] != '"')
            return false;
        in_quotes = in_quotes != (text[i] == '"');
        at_start = !in_quotes && text[i] == separator;
    }
    return true;
}

std::string writtenField(const std::string& text, char separator, bool in_quotes)
{
    if (!in_quotes && text.find_first_of(std::string("\"\r\n") + separator) == std::string::npos)
        return text;
    std::string quoted = "\"";
    for (const char c : text)
        quoted.append(c == '"' ? 2 : 1, c);
    return quoted + "\"";
}

// What in the fields could not be written, whatever the register holds.
std::vector<RegisterFault> fieldFaults(const std::filesystem::path& file, const CsvTable& there,
                                       const Fields& fields)
{
    std::vector<RegisterFault> faults;
    for (const auto& [column, text] : fields) {
        if (firstBadByte(text) || text.find('\0') != std::string::npos)
            faults.push_back({file, 0, column, "the new text is not UTF-8", "type it again"});
        if (!text.empty() &&
            std::find(there.header.begin(), there.header.end(), column) == there.header.end())
            faults.push_back({file, there.header_line, column, "the file has no such column",
                              "add its name to the first line, or leave the field out"});
    }
    return faults;
}

std::string withRow(std::string text, const CsvTable& there, const Fields& fields)
{
    const std::string line_end = lineEndOf(text);
    const bool in_quotes = quotesAll(text, there.separator);
    if (text.back() != '\n' && text.back() != '\r')
        text += line_end;
    for (std::size_t i = 0; i < there.header.size(); ++i) {
        const auto field = fields.find(there.header[i]);
        const std::string value = field == fields.end() ? "" : withoutBlanks(field->second);
        if (i > 0)
            text += there.separator;
        text += writtenField(value, there.separator, in_quotes);
    }
    return text + line_end;
}

// The line on which the row stands in the new text; nullopt if it would not be read back as it is.
std::optional<std::size_t> readBack(const std::string& text, const CsvTable& there,
                                    const Fields& fields)
{
    const CsvTable table = readCsv(text);
    if (!table.faults.empty() || table.rows.size() != there.rows.size() + 1)
        return std::nullopt;
    const CsvRow& row = table.rows.back();
    for (std::size_t i = 0; i < there.header.size(); ++i) {
        const auto field = fields.find(there.header[i]);
        if (row.fields[i] != (field == fields.end() ? "" : withoutBlanks(field->second)))
            return std::nullopt;
    }
    return row.line;
}

// Replaces the file whole, if it is still what it was.
std::optional<RegisterFault> replaceFile(const std::filesystem::path& named,
                                         const std::optional<std::string>& was,
                                         const std::string& text)
{
    std::error_code trouble;
    const std::filesystem::path real = std::filesystem::weakly_canonical(named, trouble);
    const std::filesystem::path file = trouble ? named : real;
    std::filesystem::path beside = file;
    beside.concat(".").concat(std::to_string(std::random_device()())).concat(".part");
    const bool is_whole = writeNewFile(beside, text) && bytesOf(beside) == text;
    const bool is_unchanged = bytesOf(file) == was;
    if (is_whole && is_unchanged) {
        if (was)
            std::filesystem::permissions(beside, std::filesystem::status(file).permissions(),
                                         trouble);
        std::filesystem::rename(beside, file, trouble);
        if (!trouble) {
            syncFolder(file.parent_path());
            return std::nullopt;
        }
    }
    std::filesystem::remove(beside, trouble);
    if (is_whole && !is_unchanged)
        return RegisterFault{named, 0, "", "the file was changed by another program meanwhile",
                             "do it again"};
    return RegisterFault{named, 0, "", "the file cannot be written",
                         "check that the folder may be written to and has room"};
}

// What is found with the new text and was not before.
void compare(const std::filesystem::path& folder, const PendingFile& pending, Appended& appended,
             std::size_t line)
{
    std::set<std::string> before;
    for (const RegisterFinding& finding : checkRegister(folder))
        before.insert(finding.what.message());
    for (RegisterFinding& finding : checkRegister(folder, pending)) {
        const bool of_line = finding.what.line == line && finding.what.file == appended.file;
        if (before.count(finding.what.message()) != 0)
            continue;
        if (finding.is_fault)
            appended.refused.push_back(std::move(finding.what));
        else if (of_line)
            appended.remarks.push_back(std::move(finding.what));
    }
}

// What a file holds, as text and as a table.
struct Held {
    std::optional<std::string> bytes;  // nullopt: there is no such file yet
    std::string text;                  // the bytes, or the header of a new file
    CsvTable table;
};

void append(const Held& held, const RegisterTable& table, const Fields& fields, Appended& appended)
{
    const std::string longer = withRow(held.text, held.table, fields);
    const std::optional<std::size_t> line = readBack(longer, held.table, fields);
    if (!line) {
        appended.refused = {{appended.file, 0, "",
                             "the new line would not be read back as it is given",
                             "leave out signs that are no text"}};
        return;
    }
    compare(appended.file.parent_path(), {table.file, longer}, appended, *line);
    if (!appended.refused.empty())
        return;
    if (const auto fault = replaceFile(appended.file, held.bytes, longer))
        appended.refused = {*fault};
    else
        appended.line = *line;
}

}  // namespace

Appended appendToRegister(const std::filesystem::path& folder, const RegisterTable& table,
                          const Fields& fields)
{
    std::error_code trouble;
    if (!std::filesystem::is_directory(folder, trouble))
        return {folder, 0, {notAFolder(folder)}, {}};
    Appended appended{folder / table.file, 0, {}, {}};
    const RegisterFile now(appended.file, table.columns);
    Held held;
    if (now.isThere())
        held.bytes = bytesOf(appended.file);
    if (!now.isThere() && table.needed)
        appended.refused = {
            {appended.file, 0, "", "the file is missing",
             "write it with a first line that names the columns: " + joinedColumns(table)}};
    else
        appended.refused = now.faults();
    if (!appended.refused.empty())
        return appended;
    held.text = held.bytes.value_or(joinedColumns(table) + "\n");
    held.table = RegisterFile(appended.file, held.text, table.columns).table();
    appended.refused = fieldFaults(appended.file, held.table, fields);
    if (appended.refused.empty())
        append(held, table, fields, appended);
    return appended;
}

}  // namespace models
