#include <memory>

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include "app/cli/commands.h"
#include "app/cli/dating_text.h"
#include "app/cli/exit_codes.h"
#include "app/cli/item_changes.h"
#include "app/cli/places.h"
#include "app/cli/read_json.h"
#include "app/cli/record_text.h"
#include "app/cli/records.h"
#include "models/exchange/item_json.h"

namespace cli {

namespace {

// What a new item takes from the one before it, and tells that it does.
void takeDefaults(models::ItemRecord& item, const ItemOptions& options,
                  const models::Archive& archive, std::ostream& err)
{
    const auto before = options.fresh ? std::nullopt : archive.lastItem();
    if (!before)
        return;
    std::string told;
    const auto take = [&](const std::optional<std::string>& given, const char* name,
                          std::string& field, const std::string& value) {
        if (given || value.empty())
            return;
        field = value;
        told += (told.empty() ? "" : ", ") + std::string(name) + " " + value;
    };
    take(options.type_id, "type", item.type_id, before->type_id);
    take(options.owner, "owner", item.owner, before->owner);
    take(options.place_found, "place found", item.place_found, before->place_found);
    if (!told.empty())
        err << "weftmark: as the item before ("
            << (before->accession_number.empty() ? before->id : before->accession_number)
            << "): " << told << "; --fresh leaves this out\n";
}

std::string fileNew(const ItemOptions& options, models::Archive& archive,
                    const ItemContext& context, Surroundings& around)
{
    models::ItemRecord item;
    takeDefaults(item, options, archive, around.err);
    item.accession_number = options.accession_number;
    item.type_id = options.type_id.value_or(item.type_id);
    item.owner = options.owner.value_or(item.owner);
    item.condition = options.condition.value_or("");
    item.place_found = options.place_found.value_or(item.place_found);
    item.notes = options.notes.value_or("");
    models::RecordAdditions all = additionsFrom(options, item, context);
    item.stamps = std::move(all.stamps);
    item.features = std::move(all.features);
    item.measurements = std::move(all.measurements);
    item.dated_events = std::move(all.dated_events);
    item.attributions = std::move(all.attributions);
    const models::ItemRecord stored = archive.addItem(item);
    around.err << "weftmark: filed " << stored.id << "\n";
    return stored.id;
}

void printItem(const models::ItemRecord& now, const ItemOptions& options,
               const models::MakerRegister& known, Surroundings& around)
{
    const std::vector<models::PartDating> parts = dateRecord(now, known, around);
    if (options.json) {
        nlohmann::ordered_json json = models::itemJson(now);
        json["dating"] = datingsJson(parts);
        around.out << inOneLine(json) << "\n";
        return;
    }
    printRecord(around.out, now);
    around.out << "\nWhat the evidence gives now\n";
    printDatings(around.out, parts);
}

int item(const ItemOptions& options, Surroundings& around)
{
    const std::filesystem::path register_folder = registerFolder(options.register_folder, around);
    const models::MakerRegister known = models::loadRegister(register_folder);
    checkItemOptions(options, known);
    const ItemContext context{known, register_folder, author(options.author, around),
                              around.clock()};
    if (options.item.empty()) {
        models::Archive archive = models::Archive::open(
            archiveFolder(options.archive_folder, around), context.by, around.clock);
        const std::string id = fileNew(options, archive, context, around);
        printItem(archive.item(id).value(), options, known, around);
        return done;
    }
    models::Archive archive = openExisting(options.archive_folder, around, context.by);
    const std::optional<models::ItemRecord> record = recordOf(archive, options.item, around);
    if (!record)
        return nothing_found;
    archive.addTo(record->id, additionsFrom(options, *record, context));
    printItem(archive.item(record->id).value(), options, known, around);
    return done;
}

void tellStampOptions(CLI::App& command, ItemOptions& options)
{
    command
        .add_option("--stamp", options.stamps,
                    "What you read on a stamp, one stamp each time (the notation of match)")
        ->allow_extra_args(false)
        ->type_name("READING");
    command
        .add_option("--part", options.parts,
                    "What the stamp sits on: body, fitting, lining, replacement (for each stamp in "
                    "turn, or once for all)")
        ->allow_extra_args(false);
    command.add_option("--on", options.places, "Where on the part it is, in your words")
        ->allow_extra_args(false);
    command
        .add_option("--method", options.methods,
                    "How it was made: ink, stencil, impressed, woven, label, cast, engraved, "
                    "painted")
        ->allow_extra_args(false);
    command.add_option("--ink", options.inks, "Colour of the ink")->allow_extra_args(false);
    command.add_flag("--later-added", options.later_added, "The stamp looks later added");
    command.add_option(
        "--stamp-number", options.stamp_number,
        "Corrects --part, --on, --method, --ink of this filed stamp (1 is the first)");
}

void tellFactOptions(CLI::App& command, ItemOptions& options)
{
    command
        .add_option(
            "--feature", options.features,
            "A detail: FEATURE=present, =absent, =hidden (cannot be seen), =altered (later)")
        ->allow_extra_args(false);
    command
        .add_option("--measure", options.measurements,
                    "A measurement: \"length=914 mm\", \"width=2 1/4 in, tape\"")
        ->allow_extra_args(false);
    command
        .add_option("--event", options.events,
                    "A date: made=, contract=, accepted=, inspected=, repaired=, issued=, pattern= "
                    "or disposed=EDTF; \"inspected=1943, stamp 2\" where a stamp tells it")
        ->allow_extra_args(false);
    command
        .add_option("--take-back", options.taken_back,
                    "Something recorded that does not hold: measurement:2=WHY, feature:1=WHY, "
                    "event:1=WHY; it stays in the record")
        ->allow_extra_args(false);
    tellConclusionOptions(command, options.conclusion);
    command.add_option(
        "--replaces", options.replaces,
        "Number of the conclusion that this one replaces; else both stand as rivals");
}

}  // namespace

std::function<int()> prepareItem(CLI::App& command, Surroundings& around)
{
    const auto options = std::make_shared<ItemOptions>();
    command.add_option("ITEM", options->item,
                       "A filed item's id or accession number; without it a new item is filed");
    command.add_option("--accession", options->accession_number, "Accession number of a new item");
    command.add_option("--type", options->type_id, "What the piece is: an item type's id")
        ->type_name("ITEM_TYPE");
    command.add_option("--owner", options->owner, "Who owns it");
    command.add_option("--condition", options->condition, "Its condition");
    command.add_option("--place", options->place_found, "Where it was found");
    command.add_option("--notes", options->notes, "Notes");
    command.add_flag("--fresh", options->fresh,
                     "A new item takes no type, owner and place from the item before it");
    tellStampOptions(command, *options);
    tellFactOptions(command, *options);
    command.add_flag("--json", options->json,
                     "One JSON object: the whole record and, as dating, what the evidence gives");
    command.add_option("--author", options->author, author_help)->type_name("NAME");
    command.add_option("--archive", options->archive_folder, archive_help)->type_name("FOLDER");
    command.add_option("--register", options->register_folder, register_help)->type_name("FOLDER");
    return [options, &around] { return item(*options, around); };
}

}  // namespace cli
