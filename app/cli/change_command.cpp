#include <filesystem>
#include <memory>

#include <CLI/CLI.hpp>
#include <QGuiApplication>
#include <nlohmann/json.hpp>

#include "app/cli/commands.h"
#include "app/cli/exit_codes.h"
#include "app/cli/places.h"
#include "app/cli/read_json.h"
#include "app/flow/date_item.h"
#include "app/report/change_plot.h"

namespace cli {

namespace {

struct ChangeCommandOptions {
    std::string feature_id, plot, archive_folder, register_folder;
    bool json = false;
};

const models::Feature& registeredFeature(const std::string& feature_id,
                                         const models::MakerRegister& known)
{
    if (const models::Feature* feature = known.feature(feature_id))
        return *feature;
    std::string features;
    for (const models::Feature& feature : known.features)
        features += (features.empty() ? "" : ", ") + feature.feature_id;
    throw UsageError("the register has no feature '" + feature_id + "'; " +
                     (features.empty() ? "it has none at all" : "it has " + features));
}

// The years in which such items were made, or those of the register.
models::YearRange rangeOf(const models::Feature& feature, const models::MakerRegister& known)
{
    const models::YearRange all = models::yearsOf(known);
    const models::ItemType* type = known.itemType(feature.type_id);
    const models::YearRange of_type = type ? models::yearsOf(*type, all) : all;
    return of_type.first <= of_type.last ? of_type : all;
}

report::ChangePlot changeOf(const models::Feature& feature, const models::MakerRegister& known,
                            const models::Archive& archive)
{
    report::ChangePlot plot;
    plot.title = feature.name;
    const models::YearRange range = rangeOf(feature, known);
    const models::CandidateRanker ranker(known);  // made ready once for all items
    const auto rank = [&](const models::ItemEvidence& letters) { return ranker.rank(letters); };
    for (const models::FoundItem& found : archive.find({})) {
        const std::optional<models::ItemRecord> record = archive.item(found.id);
        if (!record)
            continue;
        if (auto item = flow::changeItem(*record, feature.feature_id, known, range, rank))
            plot.items.push_back(std::move(*item));
    }
    plot.change = models::findProductionChange(plot.items, range);
    return plot;
}

// `time` is by step: when it begins, in years, and how likely the change's middle lies in it.
nlohmann::ordered_json posteriorJson(const models::ChangePosterior& change,
                                     const models::ProductionChange& all)
{
    constexpr double least = 0.0005;
    nlohmann::ordered_json time = nlohmann::ordered_json::array();
    for (std::size_t t = 0; t < change.time.size(); ++t)
        if (change.time[t] >= least)
            time.push_back(
                {all.range.first + static_cast<double>(t) / all.steps_a_year, change.time[t]});
    return {{"in_words", change.words},
            {"can_say", change.can_say},
            {"with", change.with},
            {"without", change.without},
            {"change", change.is_change},
            {"introduced", change.introduced},
            {"from", change.from},
            {"to", change.to},
            {"likeliest", change.likeliest},
            {"overlap_years", change.overlap_years},
            {"time", time}};
}

nlohmann::ordered_json changeJson(const models::Feature& feature,
                                  const models::ProductionChange& change)
{
    nlohmann::ordered_json json = {{"feature", feature.feature_id},
                                   {"name", feature.name},
                                   {"pooled", posteriorJson(change.pooled, change)},
                                   {"makers", nlohmann::ordered_json::array()},
                                   {"odd", change.odd}};
    for (const models::MakerChange& maker : change.makers) {
        nlohmann::ordered_json one = {{"maker", maker.maker_id}};
        one.update(posteriorJson(maker.change, change));
        json["makers"].push_back(one);
    }
    return json;
}

void printChange(std::ostream& out, const models::Feature& feature,
                 const models::ProductionChange& change, const models::MakerRegister& known)
{
    out << feature.name << ": " << change.pooled.words << "\n";
    for (const models::MakerChange& maker : change.makers) {
        const models::Maker* registered = known.maker(maker.maker_id);
        out << "  " << (registered ? registered->name : maker.maker_id) << ": "
            << maker.change.words << "\n";
    }
    for (const std::string& odd : change.odd)
        out << "  not explained by it: " << odd << "\n";
}

void writePlot(const report::ChangePlot& plot, const std::string& file, Surroundings& around)
{
    const std::string ending = std::filesystem::path(file).extension().string();
    if (ending != ".svg" && ending != ".png")
        throw UsageError("a plot is written as .svg or .png, not as '" + file + "'");
    std::unique_ptr<QGuiApplication> application;  // fonts need one; no display is used
    int count = 1;
    char name[] = "weftmark";
    char* arguments[] = {name, nullptr};
    if (!QCoreApplication::instance()) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
        application = std::make_unique<QGuiApplication>(count, arguments);
    }
    report::writeChangePlot(plot, file);
    around.err << "weftmark: the plot is in " << file << "\n";
}

int change(const ChangeCommandOptions& options, Surroundings& around)
{
    const models::MakerRegister known =
        models::loadRegister(registerFolder(options.register_folder, around));
    const models::Feature& feature = registeredFeature(options.feature_id, known);
    const models::Archive archive = openExisting(options.archive_folder, around);
    const report::ChangePlot plot = changeOf(feature, known, archive);
    if (!options.plot.empty())
        writePlot(plot, options.plot, around);
    if (options.json)
        around.out << inOneLine(changeJson(feature, plot.change)) << "\n";
    else
        printChange(around.out, feature, plot.change, known);
    if (plot.items.empty())
        around.err << "weftmark: no dated item says whether it has this feature; record it with "
                      "item ITEM --feature "
                   << options.feature_id << "=present\n";
    return plot.items.empty() ? nothing_found : done;
}

}  // namespace

std::function<int()> prepareChange(CLI::App& command, Surroundings& around)
{
    const auto options = std::make_shared<ChangeCommandOptions>();
    command.add_option("FEATURE", options->feature_id, "A feature's id in the register")
        ->required();
    command.add_option("--plot", options->plot, "Draws it, too: a file that ends in .svg or .png")
        ->type_name("FILE");
    command.add_flag("--json", options->json, "One JSON object: pooled, makers, odd");
    command.add_option("--archive", options->archive_folder, archive_help)->type_name("FOLDER");
    command.add_option("--register", options->register_folder, register_help)->type_name("FOLDER");
    return [options, &around] { return change(*options, around); };
}

}  // namespace cli
