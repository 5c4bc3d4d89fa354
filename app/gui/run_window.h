#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace gui {

struct WindowOptions {
    std::vector<std::filesystem::path> photos;  // opened at once, in this order; may be empty
    std::filesystem::path register_folder;      // what is known: makers, marks, item types
    std::filesystem::path archive_folder;  // where records and drafts are kept; made if missing
    std::string author;                    // who records; empty takes the account's name
};

// Opens the window and stays until it is closed. Probe for a display before: without one the
// window toolkit ends the program.
//   returns  the program's exit code, 0 when the window was closed as usual
int runWindow(int& argc, char** argv, const WindowOptions& options);

}  // namespace gui
