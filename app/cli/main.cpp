#include <cstdlib>
#include <iostream>
#include <string>
#include <system_error>
#include <vector>

#include <pwd.h>
#include <unistd.h>

#include "app/cli/commands.h"
#include "app/cli/display.h"

namespace {

std::optional<std::string> environment(const std::string& name)
{
    const char* value = std::getenv(name.c_str());
    return value ? std::optional<std::string>(value) : std::nullopt;
}

std::string loginName()
{
    const passwd* account = ::getpwuid(::getuid());
    return account ? account->pw_name : "";
}

// The register of the source tree where the program was built; else the one beside the program.
std::filesystem::path installedRegister()
{
    std::error_code trouble;
    if (std::filesystem::is_directory(WEFTMARK_REGISTER_FOLDER, trouble))
        return WEFTMARK_REGISTER_FOLDER;
    const std::filesystem::path program = std::filesystem::read_symlink("/proc/self/exe", trouble);
    return program.parent_path() / "register";
}

}  // namespace

int main(int argc, char** argv)
{
    cli::Surroundings around{
        .out = std::cout,
        .err = std::cerr,
        .progress_shown = ::isatty(STDERR_FILENO) == 1,
        .environment = environment,
        .login_name = loginName(),
        .installed_register = installedRegister(),
        .clock = models::utcNow,
        .make_engines = flow::makeEngines,
        .display_trouble = [] { return cli::displayTrouble(environment); },
        .run_window =
            [&](const gui::WindowOptions& options) {
                int program_only = 1;  // the other arguments are ours, not the window toolkit's
                return gui::runWindow(program_only, argv, options);
            },
    };
    return cli::runCommandLine(cli::allCommands(), std::vector<std::string>(argv + 1, argv + argc),
                               around);
}
