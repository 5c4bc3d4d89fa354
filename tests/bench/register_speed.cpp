#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iostream>
#include <random>
#include <string>
#include <vector>

#include "models/register_check.h"
#include "tests/bench/made_register.h"

// How long a large register takes to load and to check: register_speed [MAKERS], else 10,000. Made
// up, with three marks a maker; nothing is kept.
namespace {

constexpr int repetitions = 5;

struct Seconds {
    double by_the_clock = 0, of_processor = 0;
};

double median(std::vector<double> values)
{
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
}

Seconds medianOf(const std::function<void()>& run)
{
    std::vector<double> by_the_clock, of_processor;
    for (int i = 0; i < repetitions; ++i) {
        const auto start = std::chrono::steady_clock::now();
        const std::clock_t processor_start = std::clock();
        run();
        const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
        by_the_clock.push_back(taken.count());
        of_processor.push_back(static_cast<double>(std::clock() - processor_start) /
                               CLOCKS_PER_SEC);
    }
    return {median(by_the_clock), median(of_processor)};
}

std::ostream& operator<<(std::ostream& out, const Seconds& seconds)
{
    return out << seconds.by_the_clock << " s (" << seconds.of_processor << " s of processor)";
}

}  // namespace

int main(int argc, char** argv)
{
    const int makers = argc > 1 ? std::atoi(argv[1]) : 10000;
    const std::filesystem::path folder =
        std::filesystem::temp_directory_path() /
        ("weftmark_register_speed_" + std::to_string(std::random_device()()));
    std::filesystem::create_directories(folder);
    bench::writeMadeRegister(folder, makers);
    std::size_t marks = 0, findings = 0;
    const Seconds load = medianOf([&] { marks = models::loadRegister(folder).marks.size(); });
    const Seconds check = medianOf([&] { findings = models::checkRegister(folder).size(); });
    std::filesystem::remove_all(folder);
    std::cout << makers << " makers, " << marks << " marks; median of " << repetitions << "\nload "
              << load << "\ncheck " << check << ", " << findings << " findings\n";
}
