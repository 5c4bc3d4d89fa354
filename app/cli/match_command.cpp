#include <memory>

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include "app/cli/commands.h"
#include "app/cli/day_order.h"
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
    std::string reading, type_id, day_order, register_folder, archive_folder;
    bool json = false;
};

int match(const MatchOptions& options, Surroundings& around)
{
    const models::DayOrder day_order = dayOrderFrom(options.day_order);
    models::Reading reading;
    reading.lines = linesFromTyped(options.reading);
    const models::MakerRegister known =
        models::loadRegister(registerFolder(options.register_folder, around));
    requireItemType(options.type_id, known);
    models::Experience experience;
    if (!options.archive_folder.empty())
        experience = openExisting(options.archive_folder, around).experience();
    const models::CandidateList candidates =
        flow::rankReadings({reading}, known, options.type_id, experience);
    const auto dates = flow::datesOf(reading.lines, known, options.type_id, day_order);
    if (options.json) {
        nlohmann::ordered_json json = {{"lines", datedLinesJson(reading.lines, dates)}};
        json.update(candidatesJson(candidates));
        around.out << inOneLine(json) << "\n";
        return done;
    }
    for (std::size_t i = 0; i < reading.lines.size(); ++i) {
        around.out << lineInWords(reading.lines[i]) << "\n";
        if (!dates[i].empty())
            around.out << "    date: " << datesInWords(dates[i]) << "\n";
    }
    around.out << "can mean\n";
    printCandidates(around.out, candidates, "  ");
    printSettling(around.out, candidates, "  ");
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
    command.add_flag("--json", options->json,
                     "One JSON object: lines (typed, dates with edtf and probability), candidates");
    command.add_option("--type", options->type_id, "What the piece is: an item type's id")
        ->type_name("ITEM_TYPE");
    command.add_option("--day-order", options->day_order, day_order_help)->type_name("day|month");
    command.add_option("--register", options->register_folder, register_help)->type_name("FOLDER");
    command
        .add_option("--archive", options->archive_folder,
                    "Count what the archive in this folder holds: items of each maker, and what "
                    "letters were taken for (weftmark confusion)")
        ->type_name("FOLDER");
    return [options, &around] { return match(*options, around); };
}

}  // namespace cli
