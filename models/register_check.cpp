#include "models/register_check.h"

#include <algorithm>
#include <iterator>
#include <system_error>
#include <utility>

#include "models/edtf.h"
#include "models/register_checks.h"
#include "models/register_tables.h"
#include "models/spreadsheet_harm.h"

namespace models {

namespace {

// Where the file comes in the order of the register's files.
std::size_t placeOf(const std::string& file_name)
{
    const std::vector<RegisterTable>& tables = registerTables();
    const auto found = std::find_if(tables.begin(), tables.end(), [&](const RegisterTable& table) {
        return table.file == file_name;
    });
    return static_cast<std::size_t>(found - tables.begin());
}

void sortByPlace(std::vector<RegisterFinding>& findings)
{
    std::vector<std::vector<RegisterFinding>> by_file(registerTables().size() + 1);
    for (RegisterFinding& finding : findings)
        by_file[placeOf(finding.what.file.filename().string())].push_back(std::move(finding));
    findings.clear();
    for (std::vector<RegisterFinding>& of_file : by_file) {
        std::stable_sort(of_file.begin(), of_file.end(),
                         [](const RegisterFinding& one, const RegisterFinding& other) {
                             return std::pair(one.what.line, !one.is_fault) <
                                    std::pair(other.what.line, !other.is_fault);
                         });
        std::move(of_file.begin(), of_file.end(), std::back_inserter(findings));
    }
}

}  // namespace

void Remarks::add(const char* file, std::size_t line, const char* column, std::string problem,
                  std::string remedy)
{
    list.push_back({folder_ / file, line, column, std::move(problem), std::move(remedy)});
}

WrittenYears::WrittenYears(const std::string& first, const std::string& last)
    : from(first), to(last)
{
    if (const auto bounds = edtfYearBounds(from)) {
        from_first = bounds->first;
        from_last = bounds->last;
        is_soft = bounds->soft;
    }
    if (const auto bounds = edtfYearBounds(to)) {
        to_first = bounds->first;
        to_last = bounds->last;
        is_soft = is_soft || bounds->soft;
    }
}

bool WrittenYears::overlaps(const WrittenYears& other) const
{
    return start() <= other.end() && other.start() <= end();
}

std::string commonYears(const WrittenYears& one, const WrittenYears& other)
{
    const int first = std::max(one.start(), other.start()), last = std::min(one.end(), other.end());
    if (first < 0 && last > 9999)
        return "all years";
    if (first < 0)
        return "the years up to " + std::to_string(last);
    if (last > 9999)
        return "the years from " + std::to_string(first);
    if (first == last)
        return "the year " + std::to_string(first);
    return "the years " + std::to_string(first) + " to " + std::to_string(last);
}

std::vector<RegisterFinding> checkRegister(const std::filesystem::path& folder,
                                           const PendingFile& pending)
{
    std::error_code trouble;
    if (!std::filesystem::is_directory(folder, trouble))
        return {{notAFolder(folder), true}};
    RegisterLoader loader(folder, pending);
    loader.load();
    Remarks remarks(folder);
    checkRepeats(loader.known, remarks);
    checkUnlistedSources(loader.known, remarks);
    checkYears(loader.known, remarks);
    checkSuccession(loader.known, remarks);
    checkMarksApart(loader.known, remarks);
    checkCodeMeanings(loader.known, remarks);
    std::vector<RegisterFinding> findings;
    for (RegisterFault& fault : loader.faults)
        findings.push_back({std::move(fault), true});
    for (RegisterFault& remark : remarks.list)
        findings.push_back({std::move(remark), false});
    sortByPlace(findings);
    return findings;
}

}  // namespace models
