#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/gui/run_window.h"
#include "models/archive/archive.h"
#include "tests/app/fake_reader.h"
#include "tests/support/temporary_folder.h"

namespace support {

struct Ran {
    int code = -1;
    std::string out, err;

    std::vector<std::string> outLines() const;
};

// Runs the program's commands as a person would, with streams caught, a made-up environment, a
// register of two makers and a reader that sees what the test says (W. POLGLASE / 1941 at first).
class CommandRunner {
public:
    CommandRunner();

    Ran run(const std::vector<std::string>& arguments);

    // The archive that the commands use, opened anew.
    models::Archive archive() const;
    std::filesystem::path archiveFolder() const { return folder.path() / "archive ä"; }

    TemporaryFolder folder;
    std::map<std::string, std::string> environment;
    std::optional<std::string> display_trouble = "there is no display";
    std::vector<gui::WindowOptions> windows;  // that were opened
    FakeReader::Sight sight;
    bool progress_shown = false;
};

}  // namespace support
