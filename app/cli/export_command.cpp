#include <filesystem>
#include <fstream>
#include <functional>
#include <memory>
#include <system_error>

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include "app/cli/commands.h"
#include "app/cli/exit_codes.h"
#include "app/cli/places.h"
#include "app/cli/read_json.h"
#include "models/exchange/item_json.h"
#include "models/exchange/items_csv.h"

namespace cli {

namespace {

struct ExportOptions {
    std::string format, output, archive_folder;
};

// Every record, oldest first, one at a time: an archive may be larger than the memory.
void forEachItem(const models::Archive& archive,
                 const std::function<void(const models::ItemRecord&)>& use)
{
    const std::vector<models::FoundItem> found = archive.find({});
    for (auto item = found.rbegin(); item != found.rend(); ++item)
        use(archive.item(item->id).value());
}

void writeCsv(std::ostream& out, const models::Archive& archive)
{
    out << models::itemsCsvHeader();
    forEachItem(archive, [&](const models::ItemRecord& item) { out << models::itemCsvRow(item); });
}

// One object; its items a line each, so that a large archive can be looked at and compared.
void writeJson(std::ostream& out, const models::Archive& archive)
{
    out << "{\"format\": \"weftmark records\", \"version\": 1, \"items\": [";
    const char* between = "\n";
    forEachItem(archive, [&](const models::ItemRecord& item) {
        out << between << inOneLine(models::itemJson(item));
        between = ",\n";
    });
    out << "\n]}\n";
}

void write(std::ostream& out, const std::string& format, const models::Archive& archive)
{
    if (format == "csv")
        writeCsv(out, archive);
    else
        writeJson(out, archive);
}

// The file appears whole or not at all.
void writeFile(const std::filesystem::path& file, const std::string& format,
               const models::Archive& archive)
{
    std::filesystem::path temporary = file;
    temporary += ".part";
    std::ofstream stream(temporary, std::ios::binary);
    write(stream, format, archive);
    stream.close();
    std::error_code trouble;
    if (stream)
        std::filesystem::rename(temporary, file, trouble);
    if (!stream || trouble) {
        std::error_code ignored;
        std::filesystem::remove(temporary, ignored);
        throw models::ArchiveError(file.string() +
                                   " cannot be written; name a file in a folder that may be "
                                   "written and has room");
    }
}

int exportAll(const ExportOptions& options, Surroundings& around)
{
    if (options.format != "csv" && options.format != "json")
        throw UsageError("'" + options.format + "' is no format for export; write csv or json");
    const models::Archive archive = openExisting(options.archive_folder, around);
    if (options.output.empty())
        write(around.out, options.format, archive);
    else
        writeFile(options.output, options.format, archive);
    return done;
}

}  // namespace

std::function<int()> prepareExport(CLI::App& command, Surroundings& around)
{
    const auto options = std::make_shared<ExportOptions>();
    command
        .add_option("--format", options->format,
                    "csv, a table of one row an item (text that a spreadsheet would take for a "
                    "formula gets an apostrophe before it), or json, the records whole")
        ->required();
    command.add_option("--output", options->output, "File to write; else standard output")
        ->type_name("FILE");
    command.add_option("--archive", options->archive_folder, archive_help)->type_name("FOLDER");
    return [options, &around] { return exportAll(*options, around); };
}

}  // namespace cli
