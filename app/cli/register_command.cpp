#include <memory>

#include <CLI/CLI.hpp>

#include "app/cli/commands.h"
#include "app/cli/register_commands.h"

namespace cli {

namespace {

constexpr const char* register_examples =
    "Examples:\n"
    "  weftmark register check --register makers-of-mine\n"
    "  weftmark register list marks HARSK\n"
    "  weftmark register show harskell-sons\n"
    "  weftmark register add mark --register makers-of-mine --maker_id harskell "
    "--text \"T.H. & CO\" --from 1923\n";

}  // namespace

std::function<int()> prepareWords(CLI::App& command, Surroundings& around,
                                  const std::vector<WordBehind>& words)
{
    const auto chosen = std::make_shared<std::function<int()>>();
    command.require_subcommand(0, 1);
    std::string known;
    for (const WordBehind& word : words) {
        known += std::string(known.empty() ? "" : ", ") + word.name;
        CLI::App* options = command.add_subcommand(word.name, word.summary);
        const std::function<int()> run = word.prepare(*options, around);
        options->callback([chosen, run] { *chosen = run; });
    }
    return [chosen, known, name = command.get_name()] {
        if (!*chosen)
            throw UsageError("a word is missing behind " + name + "; write one of " + known);
        return (*chosen)();
    };
}

std::function<int()> prepareRegister(CLI::App& command, Surroundings& around)
{
    command.footer(register_examples);
    return prepareWords(
        command, around,
        {{"check", "Tell what is wrong in the register, and what looks wrong",
          prepareRegisterCheck},
         {"list", "List makers, marks, types, features, codes, sources or spellings",
          prepareRegisterList},
         {"show", "Show all that is known of one maker or item type", prepareRegisterShow},
         {"add", "Add a line to one of the register's files", prepareRegisterAdd}});
}

}  // namespace cli
