#include "models/register_file.h"

#include <algorithm>
#include <fstream>
#include <iterator>

#include "models/alignment.h"

namespace models {

namespace {

bool contains(const std::vector<std::string>& names, const std::string& name)
{
    return std::find(names.begin(), names.end(), name) != names.end();
}

std::string lowered(std::string text)
{
    std::transform(text.begin(), text.end(), text.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
    return text;
}

std::string joined(const std::vector<std::string>& names)
{
    std::string text;
    for (const std::string& name : names)
        text.append(text.empty() ? "" : ", ").append(name);
    return text;
}

}  // namespace

RegisterFile::RegisterFile(std::filesystem::path file, const ColumnPlan& plan)
    : file_(std::move(file))
{
    std::error_code trouble;
    is_there_ = std::filesystem::exists(file_, trouble);
    if (!is_there_)
        return;
    std::string text;
    std::ifstream stream;
    if (std::filesystem::is_regular_file(file_, trouble)) {  // to read a folder would throw
        stream.open(file_, std::ios::binary);
        text.assign(std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>());
    }
    if (!stream.is_open() || stream.bad()) {
        faults_.push_back({file_, 0, "", "the file cannot be read", "check that it may be opened"});
        return;
    }
    take(text, plan);
}

RegisterFile::RegisterFile(std::filesystem::path file, const std::string& text,
                           const ColumnPlan& plan)
    : file_(std::move(file)), is_there_(true)
{
    take(text, plan);
}

void RegisterFile::take(const std::string& text, const ColumnPlan& plan)
{
    table_ = readCsv(text);
    for (std::string& name : table_.header)
        name = lowered(name);
    for (const CsvFault& found : table_.faults)
        faults_.push_back({file_, found.line, found.column, found.problem, found.remedy});
    if (!table_.header.empty())
        checkHeader(plan);
}

void RegisterFile::checkHeader(const ColumnPlan& plan)
{
    for (std::size_t i = 0; i < table_.header.size(); ++i)
        columns_.emplace(table_.header[i], i);
    bool complete = true;
    for (const std::string& name : plan.required) {
        complete = complete && columns_.count(name) != 0;
        if (columns_.count(name) == 0)
            faults_.push_back({file_, table_.header_line, name, "the column is missing",
                               "name the columns in the first line: " + joined(plan.required) +
                                   "; if you like also " + joined(plan.optional)});
    }
    if (!complete)
        table_.rows.clear();  // one fault, not one a line
    for (const std::string& name : table_.header) {
        if (contains(plan.required, name) || contains(plan.optional, name))
            continue;
        for (const std::string& meant : plan.optional)
            if (columns_.count(meant) == 0 && editDistance(name, meant) <= 2)
                faults_.push_back({file_, table_.header_line, name, "no column has this name",
                                   "write '" + meant + "' if that is meant"});
    }
}

std::string RegisterFile::field(const CsvRow& row, const std::string& column) const
{
    const auto found = columns_.find(column);
    return found == columns_.end() ? std::string() : row.fields[found->second];
}

RegisterFault RegisterFile::fault(const CsvRow& row, std::string column, std::string problem,
                                  std::string remedy) const
{
    return {file_, row.line, std::move(column), std::move(problem), std::move(remedy)};
}

}  // namespace models
