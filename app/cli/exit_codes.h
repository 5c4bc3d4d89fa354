#pragma once

namespace cli {

// What the program answers its caller; other programs rely on the numbers.
enum ExitCode {
    done = 0,
    nothing_found = 1,  // in any input
    wrong_usage = 2,    // also: a window was wanted and there is no display
    failed = 3          // at least one input failed
};

}  // namespace cli
