#include "tests/bench/run_set.h"

#include <atomic>
#include <chrono>
#include <fstream>
#include <future>
#include <string>

#include <malloc.h>

namespace bench {

namespace {

// From here on the peak is counted anew. False where the system does not let it.
bool forgetPeak()
{
    malloc_trim(0);
    std::ofstream out("/proc/self/clear_refs");
    out << "5";
    return static_cast<bool>(out.flush());
}

std::optional<double> peakMib()
{
    std::ifstream in("/proc/self/status");
    for (std::string key; in >> key;)
        if (key == "VmHWM:") {
            double kib = 0;
            in >> kib;
            return kib / 1024;
        }
    return std::nullopt;
}

}  // namespace

SetRun runSet(const BenchSet& set, const Entry& entry)
{
    SetRun run;
    run.reads.resize(set.pictures.size());
    run.seconds.resize(set.pictures.size());
    const bool peak_known = forgetPeak();
    std::atomic<std::size_t> next = 0;
    const auto work = [&] {
        const std::unique_ptr<Contestant> contestant = entry.make();
        for (std::size_t i = next++; i < set.pictures.size(); i = next++) {
            const vision::Photo photo = photoOf(set.pictures[i]);
            const auto start = std::chrono::steady_clock::now();
            run.reads[i] = contestant->read(photo, set.single_lines);
            run.seconds[i] =
                std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
        }
    };
    auto first = std::async(std::launch::async, work),
         second = std::async(std::launch::async, work);
    first.get();
    second.get();
    if (peak_known)
        run.peak_mib = peakMib();
    return run;
}

}  // namespace bench
