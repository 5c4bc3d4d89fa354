#include <map>
#include <memory>

#include <CLI/CLI.hpp>

#include "app/cli/command_line.h"
#include "app/cli/exit_codes.h"
#include "app/cli/places.h"
#include "app/cli/register_commands.h"
#include "models/register_append.h"

namespace cli {

namespace {

using Action = std::function<int()>;

struct AddedRow {
    std::map<std::string, std::string> fields;
    std::string register_folder;
};

std::string columnHelp(const std::string& column)
{
    static const std::map<std::string, std::string> help = {
        {"maker_id", "The maker's id: short, without blanks, its own"},
        {"type_id", "The item type's id"},
        {"feature_id", "The feature's id"},
        {"source_id", "The id of a source in sources.csv"},
        {"text", "The text; of a mark in the typed notation"},
        {"kind", "text, code or device"},
        {"frame", "none, box, oval, round or diamond"},
        {"from", "First year, in EDTF: 1930, 1930~ about, 193X a decade"},
        {"to", "Last year, in EDTF"},
        {"introduced", "First year, in EDTF"},
        {"withdrawn", "Last year, in EDTF"},
        {"successor_of", "Id of the maker whose works it took over"},
        {"stands_for", "maker, year, quarter or inspector"},
        {"value", "What the code means: a maker's id, a year, 1 to 4, a name"},
        {"parts", "Parts, with | between them"},
        {"sizes", "Sizes, with | between them"},
    };
    const auto found = help.find(column);
    return found == help.end() ? "The " + column : found->second;
}

// The folder to write to: never the register that came with the program.
std::filesystem::path ownRegister(const std::string& given, const Surroundings& around)
{
    if (given.empty() && around.environment("WEFTMARK_REGISTER").value_or("").empty())
        throw UsageError(
            "it is not said which register is meant; name its folder with --register "
            "or WEFTMARK_REGISTER (the one that came with the program is left as it "
            "is)");
    return registerFolder(given, around);
}

int addRow(const models::RegisterTable& table, const AddedRow& row, Surroundings& around)
{
    const models::Appended appended =
        models::appendToRegister(ownRegister(row.register_folder, around), table, row.fields);
    for (const models::RegisterFault& fault : appended.refused)
        around.err << "weftmark: nothing was added. " << fault.message() << "\n";
    if (!appended.refused.empty())
        return failed;
    around.out << "added: " << appended.file.string() << ", line " << appended.line << "\n";
    for (const models::RegisterFault& remark : appended.remarks)
        around.err << "remark: " << remark.message() << "\n";
    return done;
}

Action prepareRow(CLI::App& command, Surroundings& around, const char* row_word)
{
    const auto row = std::make_shared<AddedRow>();
    const models::RegisterTable* meant = nullptr;
    for (const models::RegisterTable& table : models::registerTables())
        if (table.row == row_word)
            meant = &table;
    const auto add_column = [&](const std::string& column) {
        return command
            .add_option_function<std::string>(
                "--" + column,
                [row, column](const std::string& value) { row->fields[column] = value; },
                columnHelp(column))
            ->type_name("TEXT");
    };
    for (const std::string& column : meant->columns.required)
        add_column(column)->required();
    for (const std::string& column : meant->columns.optional)
        add_column(column);
    command
        .add_option("--register", row->register_folder,
                    "Folder of the register; else "
                    "$WEFTMARK_REGISTER")
        ->type_name("FOLDER");
    return [row, meant, &around] { return addRow(*meant, *row, around); };
}

const auto rowOf = [](const char* word) {
    return [word](CLI::App& command, Surroundings& around) {
        return prepareRow(command, around, word);
    };
};

}  // namespace

std::function<int()> prepareRegisterAdd(CLI::App& command, Surroundings& around)
{
    return prepareWords(command, around,
                        {{"maker", "Add a maker", rowOf("maker")},
                         {"mark", "Add a mark of a maker", rowOf("mark")},
                         {"type", "Add an item type", rowOf("type")},
                         {"feature", "Add a feature of an item type", rowOf("feature")},
                         {"code", "Add a code", rowOf("code")},
                         {"spelling", "Add two spellings of one word", rowOf("spelling")},
                         {"source", "Add a source", rowOf("source")}});
}

}  // namespace cli
