#include "app/cli/command_line.h"

#include <catch2/catch.hpp>

#include "app/cli/commands.h"
#include "app/cli/display.h"
#include "tests/app/command_runner.h"

using Catch::Contains;
using support::CommandRunner;
using support::Ran;

TEST_CASE("No arguments open the window, or tell the usage where there is no display", "[app][cli]")
{
    CommandRunner runner;
    const Ran told = runner.run({});
    CHECK(told.code == 2);
    CHECK(told.out.empty());
    for (const cli::Command& command : cli::allCommands())
        CHECK_THAT(told.err, Contains(command.name));

    runner.display_trouble.reset();
    CHECK(runner.run({}).code == 0);
    REQUIRE(runner.windows.size() == 1);
    CHECK(runner.windows[0].photos.empty());
    CHECK(runner.windows[0].archive_folder == runner.archiveFolder());
    CHECK(runner.windows[0].author == "Ines Körber");
}

TEST_CASE("Help and version are results", "[app][cli]")
{
    CommandRunner runner;
    const Ran help = runner.run({"--help"});
    CHECK(help.code == 0);
    CHECK_THAT(help.out, Contains("read") && Contains("export"));
    CHECK(help.err.empty());
    for (const cli::Command& command : cli::allCommands()) {
        const Ran one = runner.run({command.name, "--help"});
        CHECK(one.code == 0);
        CHECK_THAT(one.out, Contains(command.summary));
    }
    const Ran version = runner.run({"--version"});
    CHECK(version.code == 0);
    CHECK_THAT(version.out, Catch::StartsWith("weftmark ") && Contains("."));
}

TEST_CASE("Wrong usage is told in a sentence that points to the help", "[app][cli]")
{
    CommandRunner runner;
    const std::vector<std::vector<std::string>> wrong = {
        {"raed", "a.jpg"},
        {"read"},
        {"read", "--jsno", "a.jpg"},
        {"read", "a.jpg", "--type"},
        {"match"},
        {"match", "A", "B"},
        {"show"},
        {"show", "a", "b"},
        {"find", "--year"},
        {"export"},
        {"--register", "x"},
    };
    for (const std::vector<std::string>& arguments : wrong) {
        CAPTURE(arguments);
        const Ran ran = runner.run(arguments);
        CHECK(ran.code == 2);
        CHECK(ran.out.empty());
        CHECK_THAT(ran.err, Catch::StartsWith("weftmark: ") && Contains("--help"));
        CHECK(std::count(ran.err.begin(), ran.err.end(), '\n') == 1);
    }
}

TEST_CASE("The window gets what was asked for, or says why it cannot be opened", "[app][cli]")
{
    CommandRunner runner;
    const Ran refused = runner.run({"window", "a b.jpg"});
    CHECK(refused.code == 2);
    CHECK(refused.err == "weftmark: there is no display\n");

    runner.display_trouble.reset();
    CHECK(runner.run({"window", "a b.jpg", "ü.png", "--author", "Ole", "--archive", "kept"}).code ==
          0);
    REQUIRE(runner.windows.size() == 1);
    CHECK(runner.windows[0].photos == std::vector<std::filesystem::path>{"a b.jpg", "ü.png"});
    CHECK(runner.windows[0].author == "Ole");
    CHECK(runner.windows[0].archive_folder == "kept");
    CHECK(runner.windows[0].register_folder == runner.environment["WEFTMARK_REGISTER"]);
}

TEST_CASE("A display is asked for before the window toolkit is", "[app][cli]")
{
    std::map<std::string, std::string> variables;
    const auto environment = [&](const std::string& name) -> std::optional<std::string> {
        return variables.contains(name) ? std::optional(variables[name]) : std::nullopt;
    };
    CHECK_THAT(*cli::displayTrouble(environment), Contains("no display"));
    variables["DISPLAY"] = ":4711";  // nobody listens there
    CHECK_THAT(*cli::displayTrouble(environment), Contains(":4711"));
    variables = {{"WAYLAND_DISPLAY", "wayland-nowhere"}, {"XDG_RUNTIME_DIR", "/nowhere"}};
    CHECK_THAT(*cli::displayTrouble(environment), Contains("wayland-nowhere"));
    variables = {{"QT_QPA_PLATFORM", "offscreen"}};
    CHECK_FALSE(cli::displayTrouble(environment));
}

TEST_CASE("Results that cannot be delivered are a failure", "[app][cli]")
{
    CommandRunner runner;
    std::ostringstream err;
    std::ostream broken(nullptr);  // as a standard output that is closed
    cli::Surroundings around{.out = broken,
                             .err = err,
                             .progress_shown = false,
                             .environment = [](const std::string&) { return std::nullopt; },
                             .login_name = {},
                             .installed_register = runner.environment["WEFTMARK_REGISTER"],
                             .clock = models::utcNow,
                             .make_engines = flow::makeEngines,
                             .display_trouble = {},
                             .run_window = {}};
    CHECK(cli::runCommandLine(cli::allCommands(), {"match", "WP"}, around) == 3);
    CHECK_THAT(err.str(), Contains("standard output"));
}

TEST_CASE("The archive lies where the environment says, else in the home", "[app][cli]")
{
    CommandRunner runner;
    runner.environment.erase("WEFTMARK_ARCHIVE");
    runner.environment["HOME"] = (runner.folder.path() / "home").string();
    CHECK(runner.run({"add", "--reading", "WP"}).code == 0);
    CHECK(models::Archive::isIn(runner.folder.path() / "home/.local/share/weftmark"));

    runner.environment["XDG_DATA_HOME"] = (runner.folder.path() / "data").string();
    CHECK(runner.run({"add", "--reading", "WP"}).code == 0);
    CHECK(models::Archive::isIn(runner.folder.path() / "data/weftmark"));

    runner.environment.erase("XDG_DATA_HOME");
    runner.environment["HOME"] = "";
    const Ran homeless = runner.run({"add", "--reading", "WP"});
    CHECK(homeless.code == 2);
    CHECK_THAT(homeless.err, Contains("--archive"));
}
