#include <memory>

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include "app/cli/commands.h"
#include "app/cli/exit_codes.h"
#include "app/cli/places.h"
#include "app/cli/read_json.h"
#include "app/cli/typed_text.h"
#include "app/cli/years.h"

namespace cli {

namespace {

struct FindOptions {
    std::vector<std::string> words;
    std::string maker, years, archive_folder;
    bool json = false;
};

nlohmann::ordered_json foundJson(const models::FoundItem& item)
{
    return {{"id", item.id},           {"accession_number", item.accession_number},
            {"type_id", item.type_id}, {"maker", item.maker_name},
            {"edtf", item.date_edtf},  {"text", item.text},
            {"leiden", item.leiden},   {"recorded_at", item.recorded_at}};
}

void printFound(std::ostream& out, const models::FoundItem& item)
{
    out << item.id;
    for (const std::string& fact :
         {item.accession_number, item.type_id, item.maker_name, item.date_edtf})
        out << "  " << (fact.empty() ? "-" : fact);
    out << "\n    " << (item.leiden.empty() ? "nothing read" : item.leiden) << "\n";
}

int find(const FindOptions& options, Surroundings& around)
{
    models::FindQuery query;
    for (const std::string& word : options.words)
        query.words += (query.words.empty() ? "" : " ") + word;
    linesFromTyped(query.words);  // a fault is told with its place
    query.maker = options.maker;
    if (!options.years.empty()) {
        const YearSpan span = yearSpanFrom(options.years);
        query.year_from = span.from;
        query.year_to = span.to;
    }
    const std::vector<models::FoundItem> found =
        openExisting(options.archive_folder, around).find(query);
    for (const models::FoundItem& item : found) {
        if (options.json)
            around.out << inOneLine(foundJson(item)) << "\n";
        else
            printFound(around.out, item);
    }
    if (found.empty())
        around.err << "weftmark: nothing filed fits; ask with fewer words, or write [.] for a "
                      "letter that may be unread\n";
    return found.empty() ? nothing_found : done;
}

}  // namespace

std::function<int()> prepareFind(CLI::App& command, Surroundings& around)
{
    const auto options = std::make_shared<FindOptions>();
    command.add_option(
        "WORDS", options->words,
        "Words that must all stand in the record; [.] stands for a letter that may be "
        "unread, [- - -] for any number of them (19[.]1, \"[- - -]ER\")");
    command.add_option("--maker", options->maker,
                       "Part of the id or name of a maker somebody attributed");
    command.add_option("--year", options->years,
                       "A year attributed, recorded or read, or years as 1938..1941");
    command.add_option("--archive", options->archive_folder, archive_help)->type_name("FOLDER");
    command.add_flag("--json", options->json, "One JSON object a line for each item");
    return [options, &around] { return find(*options, around); };
}

}  // namespace cli
