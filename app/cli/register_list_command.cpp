#include <algorithm>
#include <memory>

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include "app/cli/exit_codes.h"
#include "app/cli/places.h"
#include "app/cli/read_json.h"
#include "app/cli/register_commands.h"
#include "models/letters.h"
#include "models/register_file.h"

namespace cli {

namespace {

struct ListOptions {
    std::vector<std::string> words;  // the first may name what is listed
    std::string register_folder;
    bool json = false;
};

using ListedRow = std::vector<std::string>;

struct Listed {
    std::vector<std::string> columns;
    std::vector<ListedRow> rows;
};

std::string anyCase(const std::string& text)
{
    std::string capitals;
    for (const std::string& character : models::charactersOf(text))
        capitals += models::capitalOf(models::normalForm(character));
    return capitals;
}

bool holdsAll(const ListedRow& row, const std::vector<std::string>& words)
{
    return std::all_of(words.begin(), words.end(), [&](const std::string& word) {
        return std::any_of(row.begin(), row.end(), [&](const std::string& field) {
            return anyCase(field).find(anyCase(word)) != std::string::npos;
        });
    });
}

// The table that the first word names, which is then taken away; makers when it names none.
const models::RegisterTable& tableNamed(std::vector<std::string>& words)
{
    const std::vector<models::RegisterTable>& tables = models::registerTables();
    for (const models::RegisterTable& table : tables)
        if (!words.empty() && words.front() == table.row + "s") {
            words.erase(words.begin());
            return table;
        }
    return tables.front();
}

Listed listedRows(const std::filesystem::path& folder, const models::RegisterTable& table,
                  const std::vector<std::string>& words)
{
    Listed listed{table.columns.required, {}};
    listed.columns.insert(listed.columns.end(), table.columns.optional.begin(),
                          table.columns.optional.end());
    const models::RegisterFile file(folder / table.file, table.columns);
    for (const models::CsvRow& row : file.rows()) {
        ListedRow fields;
        for (const std::string& column : listed.columns)
            fields.push_back(file.field(row, column));
        if (holdsAll(fields, words))
            listed.rows.push_back(std::move(fields));
    }
    return listed;
}

void printListedJson(std::ostream& out, const Listed& listed)
{
    const char* between = "\n";
    out << "[";
    for (const ListedRow& row : listed.rows) {
        nlohmann::ordered_json object;
        for (std::size_t i = 0; i < row.size(); ++i)
            object[listed.columns[i]] = row[i];
        out << between << inOneLine(object);
        between = ",\n";
    }
    out << (listed.rows.empty() ? "]\n" : "\n]\n");
}

// In columns under their names; those that are empty throughout are left out.
void printListed(std::ostream& out, const Listed& listed)
{
    std::vector<std::string> lines(listed.rows.size() + 1);
    for (std::size_t i = 0; i < listed.columns.size(); ++i) {
        std::vector<std::string> cells = {listed.columns[i]};
        std::size_t width = 0;
        bool is_empty = true;
        for (const ListedRow& row : listed.rows) {
            cells.push_back(row[i].empty() ? "-" : row[i]);
            std::replace(cells.back().begin(), cells.back().end(), '\n', ' ');
            is_empty = is_empty && row[i].empty();
        }
        if (is_empty)
            continue;
        for (const std::string& cell : cells)
            width = std::max(width, models::charactersOf(cell).size());
        for (std::size_t at = 0; at < cells.size(); ++at)
            lines[at] +=
                cells[at] + std::string(width + 2 - models::charactersOf(cells[at]).size(), ' ');
    }
    for (std::string& line : lines)
        out << line.erase(line.find_last_not_of(' ') + 1) << "\n";
}

int listRows(ListOptions options, Surroundings& around)
{
    const std::filesystem::path folder = registerFolder(options.register_folder, around);
    models::loadRegister(folder);  // its faults are told, none listed as if it were sound
    const models::RegisterTable& table = tableNamed(options.words);
    const Listed listed = listedRows(folder, table, options.words);
    if (options.json)
        printListedJson(around.out, listed);
    else if (!listed.rows.empty())
        printListed(around.out, listed);
    if (listed.rows.empty())
        around.err << "weftmark: no " << table.row << " in " << folder.string()
                   << " fits; ask with fewer words\n";
    return listed.rows.empty() ? nothing_found : done;
}

}  // namespace

std::function<int()> prepareRegisterList(CLI::App& command, Surroundings& around)
{
    const auto options = std::make_shared<ListOptions>();
    command.add_option("WORDS", options->words,
                       "What to list: makers (when it is not said), marks, types, features, "
                       "codes, sources or spellings; then words that must all stand in the line");
    command.add_option("--register", options->register_folder, register_help)->type_name("FOLDER");
    command.add_flag("--json", options->json, "One JSON array, an object for each line");
    return [options, &around] { return listRows(*options, around); };
}

}  // namespace cli
