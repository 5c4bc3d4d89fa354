#include <memory>

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include "app/cli/commands.h"
#include "app/cli/exit_codes.h"
#include "app/cli/places.h"
#include "app/cli/read_json.h"
#include "app/cli/record_text.h"
#include "models/exchange/item_json.h"
#include "models/exchange/item_tei.h"

namespace cli {

namespace {

struct ShowOptions {
    std::string id, archive_folder;
    bool json = false, tei = false;
};

int showTei(const models::ItemRecord& item, Surroundings& around)
{
    const std::string tei = models::itemTei(item);
    around.out << tei;
    if (!tei.empty())
        return done;
    around.err << "weftmark: nothing was read on " << item.id
               << "; add what you read, then ask again\n";
    return nothing_found;
}

int show(const ShowOptions& options, Surroundings& around)
{
    const std::optional<models::ItemRecord> item =
        openExisting(options.archive_folder, around).item(options.id);
    if (!item) {
        around.err << "weftmark: nothing is filed under " << options.id
                   << "; look its id or accession number up with weftmark find\n";
        return nothing_found;
    }
    if (options.tei)
        return showTei(*item, around);
    if (options.json)
        around.out << inOneLine(models::itemJson(*item)) << "\n";
    else
        printRecord(around.out, *item);
    return done;
}

}  // namespace

std::function<int()> prepareShow(CLI::App& command, Surroundings& around)
{
    const auto options = std::make_shared<ShowOptions>();
    command.add_option("ID", options->id, "The item's id or accession number")->required();
    command.add_option("--archive", options->archive_folder, archive_help)->type_name("FOLDER");
    CLI::Option* json =
        command.add_flag("--json", options->json, "The whole record as one JSON object");
    command.add_flag("--tei", options->tei, "What was read on it, as EpiDoc TEI")->excludes(json);
    return [options, &around] { return show(*options, around); };
}

}  // namespace cli
