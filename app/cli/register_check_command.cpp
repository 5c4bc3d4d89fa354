#include <algorithm>
#include <memory>

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include "app/cli/exit_codes.h"
#include "app/cli/places.h"
#include "app/cli/read_json.h"
#include "app/cli/register_commands.h"
#include "models/register_check.h"

namespace cli {

namespace {

struct CheckOptions {
    std::string register_folder;
    bool json = false;
};

std::string numbered(std::size_t number, const std::string& what)
{
    return std::to_string(number) + " " + what + (number == 1 ? "" : "s");
}

nlohmann::ordered_json findingJson(const models::RegisterFinding& finding)
{
    return {{"kind", finding.is_fault ? "fault" : "remark"},
            {"file", finding.what.file.string()},
            {"line", finding.what.line},
            {"column", finding.what.column},
            {"problem", finding.what.problem},
            {"remedy", finding.what.remedy}};
}

void printFindingsJson(std::ostream& out, const std::vector<models::RegisterFinding>& findings)
{
    const char* between = "\n";
    out << "[";
    for (const models::RegisterFinding& finding : findings) {
        out << between << inOneLine(findingJson(finding));
        between = ",\n";
    }
    out << (findings.empty() ? "]\n" : "\n]\n");
}

int checkFolder(const CheckOptions& options, Surroundings& around)
{
    const std::filesystem::path folder = registerFolder(options.register_folder, around);
    const std::vector<models::RegisterFinding> findings = models::checkRegister(folder);
    const auto faults = static_cast<std::size_t>(
        std::count_if(findings.begin(), findings.end(),
                      [](const models::RegisterFinding& finding) { return finding.is_fault; }));
    const int code = faults == 0 ? done : failed;
    if (options.json) {
        printFindingsJson(around.out, findings);
        return code;
    }
    for (const models::RegisterFinding& finding : findings)
        around.out << (finding.is_fault ? "fault: " : "remark: ") << finding.what.message() << "\n";
    around.out << numbered(faults, "fault") << ", " << numbered(findings.size() - faults, "remark")
               << " in " << folder.string();
    if (faults > 0)
        around.out << "; the register cannot be used until the faults are mended\n";
    else
        around.out << (findings.empty() ? "\n" : "; the register can be used as it is\n");
    return code;
}

}  // namespace

std::function<int()> prepareRegisterCheck(CLI::App& command, Surroundings& around)
{
    const auto options = std::make_shared<CheckOptions>();
    command.add_option("--register", options->register_folder, register_help)->type_name("FOLDER");
    command.add_flag("--json", options->json,
                     "One JSON array, an object for each fault (nothing can be read with it) or "
                     "remark (what looks wrong)");
    return [options, &around] { return checkFolder(*options, around); };
}

}  // namespace cli
