#include "models/csv_table.h"

#include <algorithm>
#include <optional>
#include <set>

#include "models/letters.h"
#include "models/spreadsheet_harm.h"

namespace models {

namespace {

constexpr const char* byte_order_mark = "\xEF\xBB\xBF";

bool isLineBreak(char c)
{
    return c == '\n' || c == '\r';
}

// Does the first line end at or before this position?
std::size_t lineEnd(const std::string& text, std::size_t from)
{
    const std::size_t end = text.find_first_of("\r\n", from);
    return end == std::string::npos ? text.size() : end;
}

// The separator that occurs most often in the header outside quotes; a comma when none does.
char separatorOf(const std::string& header)
{
    const char separators[] = {',', ';', '\t'};
    std::size_t counts[3] = {};
    bool in_quotes = false;
    for (const char c : header) {
        if (c == '"')
            in_quotes = !in_quotes;
        for (std::size_t i = 0; i < 3 && !in_quotes; ++i)
            counts[i] += c == separators[i] ? 1 : 0;
    }
    return separators[std::max_element(counts, counts + 3) - counts];
}

std::string trimmed(const std::string& text)
{
    const std::size_t first = text.find_first_not_of(" \t");
    if (first == std::string::npos)
        return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

struct RawRow {
    CsvRow row;
    std::optional<CsvFault> fault;
};

class CsvReader {
public:
    CsvReader(const std::string& text, std::size_t at, std::size_t line, char separator)
        : text_(text), at_(at), line_(line), separator_(separator)
    {
    }

    bool atEnd() const { return at_ >= text_.size(); }
    RawRow readRow();

private:
    bool atFieldEnd() const
    {
        return atEnd() || text_[at_] == separator_ || isLineBreak(text_[at_]);
    }
    void skipLineBreak();
    std::string readPlain(RawRow& raw);
    std::string readQuoted(RawRow& raw);

    const std::string& text_;
    std::size_t at_, line_;
    char separator_;
};

void CsvReader::skipLineBreak()
{
    if (atEnd())
        return;
    at_ += text_[at_] == '\r' && at_ + 1 < text_.size() && text_[at_ + 1] == '\n' ? 2 : 1;
    ++line_;
}

std::string CsvReader::readPlain(RawRow& raw)
{
    std::string field;
    for (; !atFieldEnd(); ++at_) {
        if (text_[at_] == '"' && !raw.fault)
            raw.fault = CsvFault{line_, "", "a quotation mark stands inside a field without quotes",
                                 "put the whole field in quotes and double the mark inside"};
        field += text_[at_];
    }
    return trimmed(field);
}

std::string CsvReader::readQuoted(RawRow& raw)
{
    const std::size_t opened_in = line_;
    std::string field;
    for (++at_; !atEnd(); ++at_) {
        if (text_[at_] == '"') {
            if (at_ + 1 >= text_.size() || text_[at_ + 1] != '"')
                break;
            ++at_;
        } else if (text_[at_] == '\n' || (text_[at_] == '\r' && text_[at_ + 1] != '\n')) {
            ++line_;
        }
        field += text_[at_];
    }
    if (atEnd()) {
        raw.fault = CsvFault{opened_in, "", "a quoted field is never closed",
                             "put a quotation mark at the field's end"};
        return field;
    }
    ++at_;
    while (!atFieldEnd() && (text_[at_] == ' ' || text_[at_] == '\t'))
        ++at_;
    if (!atFieldEnd() && !raw.fault)
        raw.fault = CsvFault{line_, "", "text stands behind a closing quotation mark",
                             "double the mark if it belongs to the text"};
    return trimmed(field + readPlain(raw));
}

RawRow CsvReader::readRow()
{
    RawRow raw;
    raw.row.line = line_;
    while (true) {
        while (!atFieldEnd() && text_[at_] == ' ')
            ++at_;
        const bool in_quotes = !atEnd() && text_[at_] == '"';
        raw.row.fields.push_back(in_quotes ? readQuoted(raw) : readPlain(raw));
        if (atEnd() || text_[at_] != separator_)
            break;
        ++at_;
    }
    skipLineBreak();
    return raw;
}

bool isBlank(const CsvRow& row)
{
    return std::all_of(row.fields.begin(), row.fields.end(),
                       [](const std::string& field) { return field.empty(); });
}

void takeHeader(CsvTable& table, const CsvRow& row)
{
    table.header = row.fields;
    table.header_line = row.line;
    std::set<std::string> seen;
    for (const std::string& name : table.header)
        if (!name.empty() && !seen.insert(name).second)
            table.faults.push_back({row.line, name,
                                    "the column " + inQuotes(name) + " stands there twice",
                                    "rename or remove one of them"});
}

void takeRow(CsvTable& table, RawRow raw)
{
    if (raw.fault) {
        table.faults.push_back(*raw.fault);
        return;
    }
    if (isBlank(raw.row))
        return;
    const std::size_t have = raw.row.fields.size(), want = table.header.size();
    if (have == want) {
        table.rows.push_back(std::move(raw.row));
        return;
    }
    table.faults.push_back(
        {raw.row.line, "",
         "the line has " + std::to_string(have) + " fields, the header has " + std::to_string(want),
         have > want ? "put a field that holds the separator in quotes"
                     : "add the missing separators"});
}

}  // namespace

CsvTable readCsv(const std::string& text)
{
    CsvTable table;
    if (auto fault = encodingHarm(text)) {
        table.faults.push_back(std::move(*fault));
        return table;
    }
    std::size_t at = text.rfind(byte_order_mark, 0) == 0 ? 3 : 0, line = 1;
    const std::string first_line = text.substr(at, lineEnd(text, at) - at);
    char separator = separatorOf(first_line);
    if (first_line.size() == 5 && first_line.rfind("sep=", 0) == 0) {
        separator = first_line[4];
        at = lineEnd(text, at);
        at += text.compare(at, 2, "\r\n") == 0 ? 2 : 1;
        ++line;
    }
    table.separator = separator;
    CsvReader reader(text, std::min(at, text.size()), line, separator);
    while (!reader.atEnd()) {
        RawRow raw = reader.readRow();
        if (!table.header.empty())
            takeRow(table, std::move(raw));
        else if (!isBlank(raw.row))
            takeHeader(table, raw.row);
    }
    if (table.header.empty())
        table.faults.push_back(
            {0, "", "the file is empty", "write a first line that names the columns"});
    return table;
}

}  // namespace models
