// What ranking costs, in a made-up trade: ranking_speed [MARKS] [MAKERS] [SEED]. At each level of
// wear, stamps of three lines, by a ranker that knows the rates of error and by one that supposes
// the defaults: processor time of the candidates, and with the settling cell as the window asks it.
#include <cstdlib>
#include <ctime>
#include <iomanip>
#include <iostream>
#include <string>
#include <vector>

#include "models/candidates.h"
#include "tests/bench/simulate_scores.h"
#include "tests/bench/simulate_trade.h"
#include "tests/bench/simulate_wear.h"

namespace {

std::vector<models::Reading> threeLines(const SimulatedTrade& trade, const Wear& wear, int marks,
                                        Dice& dice)
{
    std::vector<models::Reading> readings;
    while (readings.size() < static_cast<std::size_t>(marks)) {
        SimulatedMark mark = simulateMark(trade, wear, startingPairs(), dice);
        if (mark.reading.lines.size() == 3)
            readings.push_back(std::move(mark.reading));
    }
    return readings;
}

std::vector<double> timesOf(const models::CandidateRanker& ranker,
                            const std::vector<models::Reading>& readings, bool find_settling_cell)
{
    models::CandidateOptions options;
    options.find_settling_cell = find_settling_cell;
    std::vector<double> times;
    for (const models::Reading& reading : readings) {
        const std::clock_t start = std::clock();
        ranker.rank({{reading}, ""}, options);
        times.push_back(1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
    }
    return times;
}

// One way to rank, over all levels.
struct Way {
    const char* name;
    bool find_settling_cell;
    std::vector<double> times = {};

    void run(const models::CandidateRanker& ranker, const std::vector<models::Reading>& readings)
    {
        const std::vector<double> more = timesOf(ranker, readings, find_settling_cell);
        std::cout << std::setw(12) << percentile(more, 0.5) << std::setw(8)
                  << percentile(more, 0.95);
        times.insert(times.end(), more.begin(), more.end());
    }
};

}  // namespace

int main(int argc, char** argv)
{
    const int marks = argc > 1 ? std::atoi(argv[1]) : 60;
    const auto makers = static_cast<std::size_t>(argc > 2 ? std::atoi(argv[2]) : 10000);
    const auto seed = static_cast<std::uint32_t>(argc > 3 ? std::atoi(argv[3]) : 1);
    const SimulatedTrade trade = simulateTrade(makers, makers / 4, seed);
    const models::CandidateRanker as_it_is(trade.known);
    Way knowing{"rates known", false}, supposing{"rates supposed", false},
        settling{"rates supposed, settling cell", true};
    std::cout << std::fixed << std::setprecision(1)
              << "milliseconds, median and 95th percentile: rates known; supposed; settling cell\n";
    Dice dice(seed + 7);
    for (const WearLevel& level : wearLevels()) {
        const models::CandidateRanker knows(trade.known, errorsOf(level.wear, startingPairs()));
        const std::vector<models::Reading> readings = threeLines(trade, level.wear, marks, dice);
        std::cout << std::left << std::setw(16) << level.name << std::right;
        knowing.run(knows, readings);
        supposing.run(as_it_is, readings);
        settling.run(as_it_is, readings);
        std::cout << std::endl;
    }
    for (const Way* way : {&knowing, &supposing, &settling})
        std::cout << std::left << std::setw(32) << way->name << std::right << std::setw(8)
                  << percentile(way->times, 0.5) << std::setw(8) << percentile(way->times, 0.95)
                  << "  of " << way->times.size() << "\n";
}
