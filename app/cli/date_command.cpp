#include <memory>

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include "app/cli/commands.h"
#include "app/cli/dating_text.h"
#include "app/cli/exit_codes.h"
#include "app/cli/places.h"
#include "app/cli/read_json.h"
#include "app/cli/records.h"
#include "app/flow/date_item.h"

namespace cli {

namespace {

struct DateOptions {
    std::string item, archive_folder, register_folder;
    bool json = false;
};

int date(const DateOptions& options, Surroundings& around)
{
    const models::MakerRegister known =
        models::loadRegister(registerFolder(options.register_folder, around));
    const models::Archive archive = openExisting(options.archive_folder, around);
    const std::optional<models::ItemRecord> record = recordOf(archive, options.item, around);
    if (!record)
        return nothing_found;
    const std::vector<models::PartDating> parts = dateRecord(*record, known, around);
    if (options.json) {
        nlohmann::ordered_json json = {{"item", record->id},
                                       {"accession_number", record->accession_number}};
        json.update(datingsJson(parts));
        around.out << inOneLine(json) << "\n";
    } else {
        printDatings(around.out, parts);
    }
    return done;
}

}  // namespace

std::function<int()> prepareDate(CLI::App& command, Surroundings& around)
{
    const auto options = std::make_shared<DateOptions>();
    command.add_option("ITEM", options->item, "The item's id or accession number")->required();
    command.add_flag("--json", options->json,
                     "One JSON object: for the item and each part dated on its own edtf, years, "
                     "evidence, culprits");
    command.add_option("--archive", options->archive_folder, archive_help)->type_name("FOLDER");
    command.add_option("--register", options->register_folder, register_help)->type_name("FOLDER");
    return [options, &around] { return date(*options, around); };
}

}  // namespace cli
