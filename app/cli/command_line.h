#pragma once

#include <functional>
#include <stdexcept>
#include <string>
#include <vector>

#include "app/cli/surroundings.h"

namespace CLI {
class App;
}

namespace cli {

// One word that the program understands. `prepare` tells the options to the parser and returns what
// is run once they are parsed; it answers an exit code.
struct Command {
    const char* name;
    const char* summary;
    std::function<int()> (*prepare)(CLI::App& options, Surroundings& around);
};

// The caller's mistake: what() is one sentence for the person; the program ends with wrong_usage.
class UsageError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

// Runs the program with its arguments (without its own name). No arguments open the window, or tell
// the usage where there is no display. Exceptions end here, each as a sentence on `around.err`.
//   returns  an exit code (exit_codes.h)
int runCommandLine(const std::vector<Command>& commands, const std::vector<std::string>& arguments,
                   Surroundings& around);

}  // namespace cli
