#include "app/cli/command_line.h"

#include <algorithm>
#include <filesystem>
#include <optional>
#include <system_error>

#include <CLI/CLI.hpp>

#include "app/cli/exit_codes.h"

namespace cli {

namespace {

std::string complaint(const CLI::App* app, const CLI::Error& error)
{
    std::string name;
    for (std::vector<CLI::App*> chosen = app->get_subcommands(); !chosen.empty();
         chosen = chosen.front()->get_subcommands())
        name += " " + chosen.front()->get_name();
    return std::string("weftmark: ") + error.what() + "; see weftmark" + name + " --help\n";
}

// The parser takes a list's argument in brackets for a list of its own and would strip [...] of
// them; a mark before it keeps it whole until it is the option's value.
constexpr char bracket_mark = '\x01';

std::string marked(const std::string& argument)
{
    const bool bracketed = argument.size() > 1 && argument.front() == '[' && argument.back() == ']';
    return bracketed ? bracket_mark + argument : argument;
}

std::string unmarked(const std::string& value)
{
    return !value.empty() && value.front() == bracket_mark ? value.substr(1) : value;
}

void unmarkValues(CLI::App& command)
{
    for (CLI::Option* option : command.get_options())
        option->transform(unmarked);
    for (CLI::App* word : command.get_subcommands([](CLI::App*) { return true; }))
        unmarkValues(*word);
}

constexpr const char* examples =
    "Examples:\n"
    "  weftmark read belt.jpg                      read a photograph, tell what it can mean\n"
    "  weftmark match \"T.H. & CO / 193[.]\"        what a reading of yours can mean\n"
    "  weftmark add belt.jpg --accession \"SHT 12\"  read it and file the record\n"
    "  weftmark find HARSK --year 1938..1941       look a record up\n"
    "  weftmark register show harskell             what the register knows of a maker\n"
    "  weftmark window belt.jpg                    read it letter by letter, and file it\n";

// Results that did not arrive are a failure, or a full disk would pass for success.
int delivered(int code, Surroundings& around)
{
    around.out.flush();
    if (around.out)
        return code;
    around.err << "weftmark: the results cannot be written to standard output; is its disk full or "
                  "its reader gone?\n";
    return failed;
}

int runGuarded(const std::function<int()>& action, Surroundings& around)
{
    try {
        return delivered(action(), around);
    } catch (const UsageError& error) {
        around.err << "weftmark: " << error.what() << "\n";
        return wrong_usage;
    } catch (const std::bad_alloc&) {
        around.err << "weftmark: there is not enough memory; close other programs and try again\n";
    } catch (const std::exception& error) {
        around.err << "weftmark: " << error.what() << "\n";
    }
    return failed;
}

// The first argument that is a file but would be taken for options.
std::optional<std::string> dashedFile(const std::vector<std::string>& arguments)
{
    for (const std::string& argument : arguments) {
        std::error_code trouble;
        if (argument == "--")
            break;
        if (argument.size() > 1 && argument.front() == '-' &&
            std::filesystem::is_regular_file(argument, trouble))
            return argument;
    }
    return std::nullopt;
}

}  // namespace

int runCommandLine(const std::vector<Command>& commands, const std::vector<std::string>& arguments,
                   Surroundings& around)
{
    if (arguments.empty() && !around.display_trouble())
        return runCommandLine(commands, {"window"}, around);
    if (const auto file = dashedFile(arguments)) {
        around.err << "weftmark: the file name " << *file << " begins with a dash; write ./"
                   << *file << "\n";
        return wrong_usage;
    }
    CLI::App app(
        "Reads maker's marks and date stamps on old equipment, tells what they can mean, "
        "and keeps a record.",
        "weftmark");
    app.set_version_flag("--version", "weftmark " WEFTMARK_VERSION, "Tell the version, and end");
    app.set_help_flag("-h,--help", "Tell what can be asked, and end");
    app.footer(examples);
    app.require_subcommand(0, 1);
    app.failure_message(complaint);
    std::function<int()> action;
    for (const Command& command : commands) {
        CLI::App* options = app.add_subcommand(command.name, command.summary);
        const std::function<int()> run = command.prepare(*options, around);
        unmarkValues(*options);
        options->callback([&action, run] { action = run; });
    }
    try {
        std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());
        std::transform(reversed.begin(), reversed.end(), reversed.begin(), marked);
        app.parse(reversed);
    } catch (const CLI::ParseError& error) {
        const int code = app.exit(error, around.out, around.err);
        return code == 0 ? delivered(done, around) : static_cast<int>(wrong_usage);
    }
    if (!action) {
        around.err << app.help();
        return wrong_usage;
    }
    return runGuarded(action, around);
}

}  // namespace cli
