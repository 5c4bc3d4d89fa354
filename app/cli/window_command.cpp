#include <memory>

#include <CLI/CLI.hpp>

#include "app/cli/commands.h"
#include "app/cli/exit_codes.h"
#include "app/cli/places.h"

namespace cli {

namespace {

struct WindowArguments {
    std::vector<std::string> photos;
    std::string register_folder, archive_folder, author;
};

gui::WindowOptions windowOptions(const WindowArguments& arguments, const Surroundings& around)
{
    gui::WindowOptions options;
    options.photos.assign(arguments.photos.begin(), arguments.photos.end());
    options.register_folder = registerFolder(arguments.register_folder, around);
    options.archive_folder = archiveFolder(arguments.archive_folder, around);
    options.author = author(arguments.author, around);
    return options;
}

}  // namespace

std::function<int()> prepareWindow(CLI::App& command, Surroundings& around)
{
    const auto arguments = std::make_shared<WindowArguments>();
    command.add_option("PHOTO", arguments->photos, "Photographs to open at once")
        ->type_name("FILE");
    command.add_option("--register", arguments->register_folder, register_help)
        ->type_name("FOLDER");
    command.add_option("--archive", arguments->archive_folder, archive_help)->type_name("FOLDER");
    command.add_option("--author", arguments->author, author_help)->type_name("NAME");
    return [arguments, &around]() -> int {
        const std::optional<std::string> trouble = around.display_trouble();
        if (trouble)
            throw UsageError(*trouble);
        return around.run_window(windowOptions(*arguments, around));
    };
}

}  // namespace cli
