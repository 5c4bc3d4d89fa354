#include <algorithm>
#include <iomanip>
#include <memory>

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include "app/cli/commands.h"
#include "app/cli/exit_codes.h"
#include "app/cli/places.h"
#include "app/cli/read_json.h"
#include "models/confusion_learning.h"

namespace cli {

namespace {

struct ConfusionOptions {
    std::string archive_folder;
    bool forget = false, json = false;
};

// What every letter of the starting table, and every corrected one, is taken for.
std::vector<models::ConfusionChange> tableOf(const std::vector<models::TaughtLetter>& taught)
{
    const models::ConfusionTable& start = models::ConfusionTable::published();
    const models::ConfusionTable learnt = models::learnConfusions(taught);
    std::vector<models::ConfusionChange> rows;
    for (const std::string& truth : learnt.letters())
        for (const auto& [seen, share] : learnt.takenFor(truth)) {
            const auto count =
                std::count(taught.begin(), taught.end(), models::TaughtLetter{truth, seen});
            rows.push_back({truth, seen, start.probability(truth, seen), share,
                            static_cast<std::size_t>(count)});
        }
    std::stable_sort(rows.begin(), rows.end(),
                     [](const auto& a, const auto& b) { return a.learnt > b.learnt; });
    return rows;
}

std::string tenths(double share)
{
    std::ostringstream text;
    text << std::fixed << std::setprecision(1) << 100 * share << " %";
    return text.str();
}

void print(const std::vector<models::ConfusionChange>& rows, std::size_t taught, std::ostream& out)
{
    out << "letters that a person typed before any maker was in view: " << taught
        << " (a starting share counts as " << models::letters_before_learning << " letters, or as "
        << models::corrections_before_learning << " corrections where that is more)\n"
        << "what stood there, what is taken for it, how often: at the start, now, corrections\n";
    for (const models::ConfusionChange& row : rows)
        out << "  " << row.truth << "  " << row.seen << "  " << tenths(row.start) << "  "
            << tenths(row.learnt) << "  " << row.count << "\n";
}

void printJson(const std::vector<models::ConfusionChange>& rows, std::size_t taught,
               std::ostream& out)
{
    nlohmann::ordered_json table = nlohmann::ordered_json::array();
    for (const models::ConfusionChange& row : rows)
        table.push_back({{"truth", row.truth},
                         {"seen", row.seen},
                         {"start", row.start},
                         {"now", row.learnt},
                         {"corrections", row.count}});
    out << inOneLine({{"letters_typed", taught}, {"confusions", table}}) << "\n";
}

int confusion(const ConfusionOptions& options, Surroundings& around)
{
    if (options.forget) {
        openExisting(options.archive_folder, around).forgetCorrections();
        around.out << "corrections made until now no longer count; the readings are unchanged\n";
        return done;
    }
    std::vector<models::TaughtLetter> taught;
    if (!options.archive_folder.empty() ||
        models::Archive::isIn(archiveFolder(options.archive_folder, around)))
        taught = openExisting(options.archive_folder, around).taughtLetters();
    if (options.json)
        printJson(tableOf(taught), taught.size(), around.out);
    else
        print(tableOf(taught), taught.size(), around.out);
    return done;
}

}  // namespace

std::function<int()> prepareConfusion(CLI::App& command, Surroundings& around)
{
    const auto options = std::make_shared<ConfusionOptions>();
    command.add_flag("--forget", options->forget,
                     "Let corrections made until now no longer count; nothing recorded is lost");
    command.add_option("--archive", options->archive_folder, archive_help)->type_name("FOLDER");
    command.add_flag("--json", options->json, "One JSON object");
    return [options, &around] { return confusion(*options, around); };
}

}  // namespace cli
