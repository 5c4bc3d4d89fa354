#include <cstdlib>
#include <ctime>
#include <iomanip>
#include <iostream>
#include <string>

#include "models/candidates.h"
#include "tests/bench/simulate_baseline.h"
#include "tests/bench/simulate_scores.h"
#include "tests/bench/simulate_trade.h"
#include "tests/bench/simulate_wear.h"

// How well makers are told from worn marks, in a made-up trade: simulate [MARKS] [MAKERS] [SEED],
// else 200 marks a level, 10,000 makers.
namespace {

// From this normalised distance on, the baseline says that nobody known made it.
constexpr double baseline_unknown_from = 0.5;

models::CandidateList asList(const StringBaseline::Answer& answer)
{
    models::CandidateList list;
    list.unknown_maker = answer.distance >= baseline_unknown_from ? 1 : answer.distance;
    double rest = 1 - list.unknown_maker;
    for (const std::string& maker : answer.makers) {
        models::Candidate candidate;
        candidate.maker_id = maker;
        candidate.probability = rest * 0.9;
        rest -= candidate.probability;
        list.candidates.push_back(candidate);
    }
    return list;
}

double millisecondsSince(std::clock_t start)
{
    return 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

void printRow(const std::string& level, const std::string& who, const AnswerScores& scores,
              const Separation& unknown)
{
    std::cout << std::left << std::setw(16) << level << std::setw(22) << who << std::right
              << std::fixed << std::setprecision(3) << std::setw(7) << scores.top1() << std::setw(7)
              << scores.top3() << std::setw(7) << scores.brier() << std::setw(7)
              << scores.calibrationError() << std::setw(7) << unknown.area() << "\n";
}

}  // namespace

int main(int argc, char** argv)
{
    const int marks = argc > 1 ? std::atoi(argv[1]) : 200;
    const auto makers = static_cast<std::size_t>(argc > 2 ? std::atoi(argv[2]) : 10000);
    const auto seed = static_cast<std::uint32_t>(argc > 3 ? std::atoi(argv[3]) : 1);
    const SimulatedTrade trade = simulateTrade(makers, makers / 4, seed);
    const StringBaseline strings(trade.known);
    const models::CandidateRanker ranker(trade.known);
    models::CandidateOptions options;
    options.unknown_prior = 0.2;
    std::vector<double> times;
    std::cout << "level           who                      top1   top3  brier    ece  auroc\n";
    for (const WearLevel& level : wearLevels()) {
        AnswerScores ours, baseline;
        Separation our_unknown, baseline_unknown;
        Dice dice(seed + 1);
        for (int i = 0; i < marks; ++i) {
            const SimulatedMark mark = simulateMark(trade, level.wear, startingPairs(), dice);
            const std::clock_t start = std::clock();
            const auto list = ranker.rank({{mark.reading}, ""}, options);
            times.push_back(millisecondsSince(start));
            ours.add(list, mark.maker_id);
            our_unknown.add(list.unknown_maker, mark.maker_id.empty());
            const auto answer = asList(strings.nearest(mark.reading));
            baseline.add(answer, mark.maker_id);
            baseline_unknown.add(answer.unknown_maker, mark.maker_id.empty());
        }
        printRow(level.name, "weftmark", ours, our_unknown);
        printRow(level.name, "strings", baseline, baseline_unknown);
    }
    std::cout << "milliseconds a mark: median " << percentile(times, 0.5) << ", 95th percentile "
              << percentile(times, 0.95) << "\n";
}
