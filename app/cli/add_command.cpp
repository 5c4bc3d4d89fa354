#include <memory>

#include <CLI/CLI.hpp>

#include "app/cli/commands.h"
#include "app/cli/conclusion_options.h"
#include "app/cli/exit_codes.h"
#include "app/cli/item_types.h"
#include "app/cli/places.h"
#include "app/cli/progress.h"
#include "app/cli/read_text.h"
#include "app/cli/typed_text.h"
#include "app/flow/filing.h"

namespace cli {

namespace {

struct AddOptions {
    std::vector<std::string> photos, readings;
    std::string archive_folder, register_folder, author;
    std::string accession_number, type_id, notes;
    ConclusionOptions conclusion;
    bool mirrored = false;
};

void check(const AddOptions& options, const models::MakerRegister& known)
{
    requireItemType(options.type_id, known);
    checkConclusion(options.conclusion, known);
    if (options.mirrored && !options.readings.empty())
        throw UsageError("--mirrored is for photographs that are read; leave it or --reading out");
    if (options.photos.empty() && options.readings.empty())
        throw UsageError("there is nothing to file; give a photograph or a --reading");
}

// An item as it grows, and what its marks can mean together.
struct Filing {
    models::ItemRecord item;
    models::CandidateList candidates;
};

void addPersonsReadings(const AddOptions& options, const std::string& by, flow::Engines& engines,
                        const Surroundings& around, Filing& filing)
{
    std::vector<models::Reading> readings;
    for (const std::string& typed : options.readings) {
        models::Reading reading;
        reading.reader = by;
        reading.lines = linesFromTyped(typed);
        for (models::Line& line : reading.lines)
            for (models::Cell& cell : line.cells)
                cell.by = by;
        reading.read_at = around.clock();
        models::ReadingRecord record;
        record.reading = reading;
        models::StampRecord stamp;
        stamp.readings = {record};
        filing.item.stamps.push_back(stamp);
        readings.push_back(reading);
    }
    for (const std::string& photo : options.photos)
        filing.item.photos.push_back(flow::photoRecord(vision::loadPhoto(photo)));
    filing.candidates = flow::rankReadings(readings, engines, options.type_id);
}

void addExamined(const AddOptions& options, flow::Engines& engines, Surroundings& around,
                 Filing& filing)
{
    flow::ExamineOptions examine;
    examine.type_id = options.type_id;
    examine.mirrored = options.mirrored;
    std::vector<models::Reading> proposals;
    for (std::size_t i = 0; i < options.photos.size(); ++i) {
        const ProgressLine progress(around, i + 1, options.photos.size(), options.photos[i]);
        const flow::Examination examination =
            flow::examinePhoto(options.photos[i], engines, examine, {},
                               [&](const std::string& stage, double) { progress.tell(stage); });
        filing.item.photos.push_back(flow::photoRecord(examination.photo));
        for (const flow::StampExamination& stamp : examination.stamps) {
            filing.item.stamps.push_back(
                flow::stampRecord(examination.photo, stamp, around.clock()));
            proposals.push_back(stamp.proposal);
        }
    }
    filing.candidates = flow::rankReadings(proposals, engines, options.type_id);
}

Filing prepareFiling(const AddOptions& options, const std::string& by,
                     const std::filesystem::path& register_folder,
                     const std::filesystem::path& archive_folder, Surroundings& around)
{
    Filing filing;
    flow::Engines engines;
    if (options.readings.empty() && !options.photos.empty())
        engines = enginesFor(register_folder, around);
    else
        engines.known = models::loadRegister(register_folder);
    check(options, engines.known);
    engines.experience = experienceIn(archive_folder, around);
    if (options.readings.empty())
        addExamined(options, engines, around, filing);
    else
        addPersonsReadings(options, by, engines, around, filing);
    if (options.conclusion.concludes())
        filing.item.attributions = {
            conclusionFrom(options.conclusion, engines.known, register_folder, filing.candidates)};
    return filing;
}

std::string countedThings(std::size_t count, const std::string& what)
{
    return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

// Told, not refused: one photograph can show several items.
void tellOtherItems(const models::Archive& archive, const models::ItemRecord& item,
                    const AddOptions& options, std::ostream& err)
{
    for (std::size_t i = 0; i < item.photos.size(); ++i)
        for (const std::string& other : archive.itemsWithPhoto(item.photos[i].sha256))
            err << "weftmark: " << options.photos[i] << " is filed with item " << other
                << " already; its original is kept once, for both\n";
}

void printFiledReadings(const models::ItemRecord& item, std::ostream& out)
{
    const auto print = [&](const std::vector<models::ReadingRecord>& readings) {
        for (const models::ReadingRecord& record : readings)
            for (const models::Line& line : record.reading.lines)
                out << "  " << lineInWords(line) << "\n";
    };
    for (const models::StampRecord& stamp : item.stamps) {
        print(stamp.readings);
        for (const models::ViewRecord& view : stamp.views)
            print(view.readings);
    }
}

int add(const AddOptions& options, Surroundings& around)
{
    const std::string by = author(options.author, around);
    const std::filesystem::path folder = archiveFolder(options.archive_folder, around);
    Filing filing =
        prepareFiling(options, by, registerFolder(options.register_folder, around), folder, around);
    filing.item.type_id = options.type_id;
    filing.item.accession_number = options.accession_number;
    filing.item.notes = options.notes;
    models::Archive archive = models::Archive::open(folder, by, around.clock);
    tellOtherItems(archive, filing.item, options, around.err);
    const models::ItemRecord stored = archive.addItem(filing.item);
    around.out << "filed " << stored.id;
    if (!stored.accession_number.empty())
        around.out << " as " << stored.accession_number;
    around.out << " with " << countedThings(stored.photos.size(), "photograph") << " and "
               << countedThings(stored.stamps.size(), "stamp") << "\n";
    printFiledReadings(stored, around.out);
    if (stored.stamps.empty())
        around.err << "weftmark: no stamp was found on it; type what you see with --reading\n";
    return done;
}

}  // namespace

std::function<int()> prepareAdd(CLI::App& command, Surroundings& around)
{
    const auto options = std::make_shared<AddOptions>();
    command.add_option("PHOTO", options->photos, "Photographs of one item")->type_name("FILE");
    command
        .add_option("--reading", options->readings,
                    "What you read, one stamp each time (the notation of match); without it the "
                    "photographs are read")
        ->allow_extra_args(false);
    command.add_flag("--mirrored", options->mirrored,
                     "The stamps are mirror images, as ink leaves on the cloth it faced");
    command.add_option("--accession", options->accession_number, "Accession number");
    command.add_option("--type", options->type_id, "What the piece is: an item type's id")
        ->type_name("ITEM_TYPE");
    command.add_option("--notes", options->notes, "Notes");
    tellConclusionOptions(command, options->conclusion);
    command.add_option("--author", options->author, author_help)->type_name("NAME");
    command.add_option("--archive", options->archive_folder, archive_help)->type_name("FOLDER");
    command.add_option("--register", options->register_folder, register_help)->type_name("FOLDER");
    return [options, &around] { return add(*options, around); };
}

}  // namespace cli
