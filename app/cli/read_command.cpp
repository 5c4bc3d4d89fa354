#include <algorithm>
#include <memory>

#include <CLI/CLI.hpp>

#include "app/cli/commands.h"
#include "app/cli/day_order.h"
#include "app/cli/exit_codes.h"
#include "app/cli/item_types.h"
#include "app/cli/layers.h"
#include "app/cli/outline.h"
#include "app/cli/places.h"
#include "app/cli/progress.h"
#include "app/cli/read_json.h"
#include "app/cli/read_text.h"
#include "app/cli/truth.h"
#include "vision/image_error.h"

#include <nlohmann/json.hpp>

namespace cli {

namespace {

struct ReadOptions {
    std::vector<std::string> photos;
    std::string outline, type_id, day_order, register_folder, archive_folder, layers_folder;
    bool json = false, single_line = false, mirrored = false;
    double max_megapixels = vision::LoadOptions{}.max_megapixels;
};

// What became of the photos so far.
struct Tally {
    bool any_failed = false, any_found = false;
    TruthTally truths;
};

double surestLine(const flow::Examination& examination)
{
    double surest = 0;
    for (const flow::StampExamination& stamp : examination.stamps)
        for (const models::Line& line : stamp.proposal.lines)
            surest = std::max(surest, models::lineCertainty(line));
    return surest;
}

class Reading {
public:
    Reading(const ReadOptions& options, Surroundings& around)
        : options_(options),
          around_(around),
          engines_(enginesFor(registerFolder(options.register_folder, around), around)),
          layers_(options.layers_folder)
    {
        requireItemType(options.type_id, engines_.known);
        engines_.experience = experienceFrom(options.archive_folder, around);
        examine_.day_order = dayOrderFrom(options.day_order);
        examine_.single_line = options.single_line;
        examine_.mirrored = options.mirrored;
        examine_.load.max_megapixels = options.max_megapixels;
        if (!options.outline.empty())
            examine_.outline = outlineFrom(options.outline);
    }

    int run()
    {
        for (std::size_t i = 0; i < options_.photos.size() && around_.out; ++i)
            readOne(i);
        if (!options_.json && !tally_.truths.isEmpty())
            around_.out << tally_.truths.sentence() << "\n";
        if (tally_.any_failed)
            return failed;
        return tally_.any_found ? done : nothing_found;
    }

private:
    void readOne(std::size_t index)
    {
        const std::string& photo = options_.photos[index];
        const std::optional<Truth> truth = options_.json ? std::nullopt : truthOf(photo);
        models::CandidateList candidates;
        double surest_line = 0;
        try {
            const flow::Examination examination = examined(index, truth);
            candidates = examination.candidates;
            surest_line = surestLine(examination);
            layers_.write(photo, examination);
            noteFound(examination);
            if (options_.json)
                around_.out << inOneLine(examinationJson(photo, examination)) << std::endl;
            else
                printExamination(around_.out, photo, examination);
        } catch (const vision::ImageError& error) {
            complain(photo, error.what());
        } catch (const std::exception& error) {
            complain(photo,
                     photo + " cannot be examined (" + error.what() +
                         "); check the options, or send the photograph to Weftmark's makers");
        }
        if (truth) {
            printTruth(around_.out, *truth, engines_.known);
            tally_.truths.count(*truth, candidates, surest_line);
        }
        if (!options_.json)
            around_.out << std::endl;
    }

    flow::Examination examined(std::size_t index, const std::optional<Truth>& truth)
    {
        flow::ExamineOptions examine = examine_;
        examine.type_id = options_.type_id;
        if (examine.type_id.empty() && truth && engines_.known.itemType(truth->item_type))
            examine.type_id = truth->item_type;
        const ProgressLine progress(around_, index + 1, options_.photos.size(),
                                    options_.photos[index]);
        return flow::examinePhoto(options_.photos[index], engines_, examine, {},
                                  [&](const std::string& stage, double) { progress.tell(stage); });
    }

    std::optional<Truth> truthOf(const std::string& photo)
    {
        try {
            return truthBeside(photo);
        } catch (const TruthError& error) {
            around_.err << "weftmark: " << error.what() << "\n";
            return std::nullopt;
        }
    }

    // A given outline is no find; something read in it is.
    void noteFound(const flow::Examination& examination)
    {
        const bool located = !options_.single_line && !examine_.outline;
        for (const flow::StampExamination& stamp : examination.stamps)
            tally_.any_found |= located || !stamp.proposal.lines.empty();
    }

    void complain(const std::string& photo, const std::string& problem)
    {
        tally_.any_failed = true;
        around_.err << "weftmark: " << problem << "\n";
        if (options_.json)
            around_.out << inOneLine(failureJson(photo, problem)) << std::endl;
        else
            around_.out << photo << "\n  could not be read\n";
    }

    const ReadOptions& options_;
    Surroundings& around_;
    flow::Engines engines_;
    LayerFolder layers_;
    flow::ExamineOptions examine_;
    Tally tally_;
};

int read(const ReadOptions& options, Surroundings& around)
{
    if (options.single_line && !options.outline.empty())
        throw UsageError("--line and --outline contradict each other; give one of them");
    if (!options.outline.empty() && options.photos.size() > 1)
        throw UsageError("--outline points into one photograph; give one");
    return Reading(options, around).run();
}

}  // namespace

std::function<int()> prepareRead(CLI::App& command, Surroundings& around)
{
    const auto options = std::make_shared<ReadOptions>();
    command.add_option("PHOTO", options->photos, "Photographs")->type_name("FILE")->required();
    command.add_flag(
        "--json", options->json,
        "One JSON object a line for each photograph; each line of text with what it is for "
        "(roles) and the dates it can hold (dates: edtf, probability)");
    command.add_flag("--line", options->single_line,
                     "Each photograph is a tight crop of one line of text");
    command.add_option("--outline", options->outline,
                       "The stamp's corners x,y,x,y,x,y,x,y in the upright photograph, clockwise "
                       "from its own top left");
    command.add_flag("--mirrored", options->mirrored,
                     "The stamps are mirror images, as ink leaves on the cloth it faced");
    command.add_option("--type", options->type_id, "What the piece is: an item type's id")
        ->type_name("ITEM_TYPE");
    command.add_option("--day-order", options->day_order, day_order_help)->type_name("day|month");
    command.add_option("--register", options->register_folder, register_help)->type_name("FOLDER");
    command.add_option("--archive", options->archive_folder, experience_help)->type_name("FOLDER");
    command
        .add_option("--layers", options->layers_folder,
                    "Folder for the enhanced pictures of each stamp (PNG)")
        ->type_name("FOLDER");
    command
        .add_option("--max-megapixels", options->max_megapixels,
                    "Refuse a larger picture before it is decoded")
        ->check(CLI::PositiveNumber)
        ->capture_default_str();
    return [options, &around] { return read(*options, around); };
}

}  // namespace cli
