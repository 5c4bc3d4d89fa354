#pragma once

#include <filesystem>
#include <string>

#include "app/cli/surroundings.h"

// Where things lie and who records, when the person does not say.
namespace cli {

// What --help says of the options that this file answers for.
inline constexpr const char* register_help =
    "Folder of the register; else $WEFTMARK_REGISTER, or the one that came with the program";
inline constexpr const char* archive_help =
    "Folder of the archive; else $WEFTMARK_ARCHIVE, or ~/.local/share/weftmark";
inline constexpr const char* experience_help =
    "Count what the archive in this folder holds: items of each maker, and what letters were taken "
    "for (weftmark confusion); else the one that add files in, where there is one";
inline constexpr const char* author_help = "Who records; else $WEFTMARK_AUTHOR, or your login name";

// $WEFTMARK_REGISTER, or the register that came with the program.
std::filesystem::path registerFolder(const std::string& given, const Surroundings& around);

// The engines with this register; tells of readers that cannot be used.
flow::Engines enginesFor(const std::filesystem::path& register_folder, Surroundings& around);

// $WEFTMARK_ARCHIVE, or weftmark in the person's data folder ($XDG_DATA_HOME, ~/.local/share).
// Throws UsageError if there is no home to put it in.
std::filesystem::path archiveFolder(const std::string& given, const Surroundings& around);

// What the archive in this folder teaches the ranking, nothing where there is none. Throws
// models::ArchiveError if it cannot be read.
models::Experience experienceIn(const std::filesystem::path& folder, const Surroundings& around);

// The same of the archive that was named, or of the usual one. Where none is named, nothing if
// there is none; one that cannot be read is told then, and left. Throws models::ArchiveError if the
// named one is not there or cannot be read.
models::Experience experienceFrom(const std::string& given, Surroundings& around);

// $WEFTMARK_AUTHOR, or the login name.
std::string author(const std::string& given, const Surroundings& around);

// Opens an archive that must be there already. Throws models::ArchiveError if there is none.
// `by` is who records; empty: as author() tells without a name.
models::Archive openExisting(const std::string& given_folder, const Surroundings& around,
                             const std::string& by = {});

}  // namespace cli
