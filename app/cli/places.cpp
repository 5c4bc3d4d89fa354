#include "app/cli/places.h"

#include <optional>

#include "app/cli/command_line.h"

namespace cli {

namespace {

// In whose name an archive is opened that is only read.
constexpr const char* records_nothing = "weftmark";

// A variable that is set to nothing is as good as not set.
std::string variable(const Surroundings& around, const char* name)
{
    return around.environment(name).value_or("");
}

std::optional<std::filesystem::path> usualArchiveFolder(const Surroundings& around)
{
    if (const std::string named = variable(around, "WEFTMARK_ARCHIVE"); !named.empty())
        return named;
    if (const std::string data = variable(around, "XDG_DATA_HOME"); !data.empty())
        return std::filesystem::path(data) / "weftmark";
    const std::string home = variable(around, "HOME");
    if (home.empty())
        return std::nullopt;
    return std::filesystem::path(home) / ".local" / "share" / "weftmark";
}

}  // namespace

std::filesystem::path registerFolder(const std::string& given, const Surroundings& around)
{
    if (!given.empty())
        return given;
    const std::string named = variable(around, "WEFTMARK_REGISTER");
    return named.empty() ? around.installed_register : std::filesystem::path(named);
}

flow::Engines enginesFor(const std::filesystem::path& register_folder, Surroundings& around)
{
    flow::Engines engines = around.make_engines(register_folder);
    for (const std::string& trouble : engines.troubles)
        around.err << "weftmark: " << trouble << "\n";
    return engines;
}

std::filesystem::path archiveFolder(const std::string& given, const Surroundings& around)
{
    if (!given.empty())
        return given;
    const auto usual = usualArchiveFolder(around);
    if (!usual)
        throw UsageError("no folder for the archive is known; name one with --archive");
    return *usual;
}

models::Experience experienceIn(const std::filesystem::path& folder, const Surroundings& around)
{
    if (!models::Archive::isIn(folder))
        return {};
    return models::Archive::open(folder, records_nothing, around.clock).experience();
}

models::Experience experienceFrom(const std::string& given, Surroundings& around)
{
    if (!given.empty())
        return openExisting(given, around, records_nothing).experience();
    const auto usual = usualArchiveFolder(around);
    if (!usual)
        return {};
    try {
        return experienceIn(*usual, around);
    } catch (const models::ArchiveError& error) {
        around.err << "weftmark: " << error.what() << "\n";
        return {};
    }
}

std::string author(const std::string& given, const Surroundings& around)
{
    if (!given.empty())
        return given;
    const std::string named = variable(around, "WEFTMARK_AUTHOR");
    if (!named.empty())
        return named;
    if (around.login_name.empty())
        throw UsageError("it is not known who records; name the person with --author");
    return around.login_name;
}

models::Archive openExisting(const std::string& given_folder, const Surroundings& around,
                             const std::string& by)
{
    const std::filesystem::path folder = archiveFolder(given_folder, around);
    if (!models::Archive::isIn(folder))
        throw models::ArchiveError(folder.string() +
                                   " holds no archive; file a first record with weftmark add, or "
                                   "name another folder with --archive");
    return models::Archive::open(folder, author(by, around), around.clock);
}

}  // namespace cli
