#include "tests/app/command_runner.h"

#include <sstream>

#include "app/cli/commands.h"

namespace support {

std::vector<std::string> Ran::outLines() const
{
    std::vector<std::string> lines;
    std::istringstream stream(out);
    for (std::string line; std::getline(stream, line);)
        lines.push_back(line);
    return lines;
}

CommandRunner::CommandRunner()
{
    environment["WEFTMARK_ARCHIVE"] = archiveFolder().string();
    environment["WEFTMARK_AUTHOR"] = "Ines Körber";
    environment["WEFTMARK_REGISTER"] = writeRegister(folder).string();
    sight = seePolglase;
}

Ran CommandRunner::run(const std::vector<std::string>& arguments)
{
    std::ostringstream out, err;
    cli::Surroundings around{
        .out = out,
        .err = err,
        .progress_shown = progress_shown,
        .environment = [this](const std::string& name) -> std::optional<std::string> {
            const auto found = environment.find(name);
            return found == environment.end() ? std::nullopt : std::optional(found->second);
        },
        .login_name = "ole",
        .installed_register = {},
        .clock = [] { return std::string("2024-03-01T08:00:00Z"); },
        .make_engines =
            [this](const std::filesystem::path& register_folder) {
                flow::Engines engines;
                engines.known = models::loadRegister(register_folder);
                engines.readers.push_back(std::make_unique<FakeReader>("fake", sight));
                return engines;
            },
        .display_trouble = [this] { return display_trouble; },
        .run_window =
            [this](const gui::WindowOptions& options) {
                windows.push_back(options);
                return 0;
            },
    };
    Ran ran;
    ran.code = cli::runCommandLine(cli::allCommands(), arguments, around);
    ran.out = out.str();
    ran.err = err.str();
    return ran;
}

models::Archive CommandRunner::archive() const
{
    return models::Archive::open(archiveFolder(), "somebody who looks");
}

}  // namespace support
