#pragma once

#include <optional>
#include <vector>

#include "tests/bench/bench_sets.h"
#include "tests/bench/contestant.h"

namespace bench {

struct SetRun {
    std::vector<ReadPicture> reads;  // in the order of the pictures
    std::vector<double> seconds;     // each picture's, loading left out
    // Most memory the process held meanwhile, MiB; nullopt where the system cannot tell.
    std::optional<double> peak_mib;
};

// Reads all pictures, two at a time, each thread with a contestant of its own. What a thread
// throws is thrown again.
SetRun runSet(const BenchSet& set, const Entry& entry);

}  // namespace bench
