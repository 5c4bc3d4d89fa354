#include <memory>

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include "app/cli/commands.h"
#include "app/cli/exit_codes.h"
#include "app/cli/item_types.h"
#include "app/cli/places.h"
#include "app/cli/read_json.h"
#include "app/cli/read_text.h"
#include "app/cli/typed_text.h"
#include "models/maker_register.h"

namespace cli {

namespace {

struct MatchOptions {
    std::string reading, type_id, register_folder;
    bool json = false;
};

int match(const MatchOptions& options, Surroundings& around)
{
    models::Reading reading;
    reading.lines = linesFromTyped(options.reading);
    const models::MakerRegister known =
        models::loadRegister(registerFolder(options.register_folder, around));
    requireItemType(options.type_id, known);
    const models::CandidateList candidates = flow::rankReadings({reading}, known, options.type_id);
    if (options.json) {
        around.out << inOneLine(candidatesJson(candidates)) << "\n";
        return done;
    }
    for (const models::Line& line : reading.lines)
        around.out << lineInWords(line) << "\n";
    around.out << "can mean\n";
    printCandidates(around.out, candidates, "  ");
    return done;
}

}  // namespace

std::function<int()> prepareMatch(CLI::App& command, Surroundings& around)
{
    const auto options = std::make_shared<MatchOptions>();
    command
        .add_option("READING", options->reading,
                    "The reading: A clear, A? unsure, (0|6) one of these, + faint, [.] one lost, "
                    "[- - -] lost at unknown length, \" / \" next line")
        ->required();
    command.add_flag("--json", options->json, "One JSON object");
    command.add_option("--type", options->type_id, "What the piece is: an item type's id")
        ->type_name("ITEM_TYPE");
    command.add_option("--register", options->register_folder, register_help)->type_name("FOLDER");
    return [options, &around] { return match(*options, around); };
}

}  // namespace cli
