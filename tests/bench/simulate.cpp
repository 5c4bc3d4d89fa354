#include <cstdlib>
#include <ctime>
#include <iomanip>
#include <iostream>
#include <memory>
#include <string>

#include "models/candidates.h"
#include "tests/bench/simulate_baseline.h"
#include "tests/bench/simulate_scores.h"
#include "tests/bench/simulate_trade.h"
#include "tests/bench/simulate_wear.h"

// How well makers are told from worn marks, in a made-up trade: simulate [MARKS] [MAKERS] [SEED],
// else 200 marks a level, 10,000 makers. At each of five levels of wear, on the same marks: the
// ranking with the true rates of error, the ranking as it is where the wear is other than it
// supposes, and the nearest mark by edit distance.
namespace {

// From this normalised distance on, the baseline says that nobody known made it.
constexpr double baseline_unknown_from = 0.5;
// Half of a mark's letters can be read.
constexpr double half_from = 0.4, half_to = 0.6;

struct Rivals {
    AnswerScores scores;
    Separation unknown, unknown_at_half, unknown_names_at_half;

    void add(const models::CandidateList& list, const SimulatedMark& mark)
    {
        scores.add(list, mark.maker_id);
        const bool stranger = mark.maker_id.empty();
        unknown.add(list.unknown_maker, stranger);
        if (mark.legible < half_from || mark.legible > half_to)
            return;
        unknown_at_half.add(list.unknown_maker, stranger);
        if (mark.names)
            unknown_names_at_half.add(list.unknown_maker, stranger);
    }
};

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

void printRow(const std::string& level, const std::string& who, const Rivals& rivals)
{
    std::cout << std::left << std::setw(16) << level << std::setw(26) << who << std::right
              << std::fixed << std::setprecision(3) << std::setw(7) << rivals.scores.top1()
              << std::setw(7) << rivals.scores.top3() << std::setw(7) << rivals.scores.brier()
              << std::setw(7) << rivals.scores.calibrationError() << std::setw(7)
              << rivals.unknown.area() << "\n";
}

// One state of the world at one level of wear, with everybody who is asked.
class World {
public:
    World(const SimulatedTrade& trade, const StringBaseline& strings, const Wear& wear,
          const std::vector<LookAlikePair>& look_alikes)
        : trade_(trade),
          strings_(strings),
          wear_(wear),
          look_alikes_(look_alikes),
          knowing_(trade.known, errorsOf(wear, look_alikes))
    {
        options_.unknown_prior = 0.2;
    }

    // `supposing` ranks as if the wear were another; nullptr for none. Times are of three lines.
    void run(int marks, std::uint32_t seed, const models::CandidateRanker* supposing,
             std::vector<double>& times)
    {
        Dice dice(seed);
        for (int i = 0; i < marks; ++i) {
            const SimulatedMark mark = simulateMark(trade_, wear_, look_alikes_, dice);
            const std::clock_t start = std::clock();
            const models::CandidateList list = knowing_.rank({{mark.reading}, ""}, options_);
            if (mark.reading.lines.size() == 3)
                times.push_back(millisecondsSince(start));
            knows.add(list, mark);
            if (supposing)
                supposes.add(supposing->rank({{mark.reading}, ""}, options_), mark);
            baseline.add(asList(strings_.nearest(mark.reading)), mark);
        }
    }

    Rivals knows, supposes, baseline;

private:
    const SimulatedTrade& trade_;
    const StringBaseline& strings_;
    const Wear wear_;
    const std::vector<LookAlikePair> look_alikes_;
    models::CandidateRanker knowing_;
    models::CandidateOptions options_;
};

void add(Rivals& all, const Rivals& level)
{
    all.scores.add(level.scores);
    all.unknown.add(level.unknown);
    all.unknown_at_half.add(level.unknown_at_half);
    all.unknown_names_at_half.add(level.unknown_names_at_half);
}

void printHalf(const std::string& who, const Rivals& rivals)
{
    std::cout << std::left << std::setw(42) << who << std::right << std::setw(7)
              << rivals.unknown_at_half.area() << " of " << rivals.unknown_at_half.count()
              << "; marks that hold a name " << rivals.unknown_names_at_half.area() << " of "
              << rivals.unknown_names_at_half.count() << "\n";
}

}  // namespace

int main(int argc, char** argv)
{
    const int marks = argc > 1 ? std::atoi(argv[1]) : 200;
    const auto makers = static_cast<std::size_t>(argc > 2 ? std::atoi(argv[2]) : 10000);
    const auto seed = static_cast<std::uint32_t>(argc > 3 ? std::atoi(argv[3]) : 1);
    const SimulatedTrade trade = simulateTrade(makers, makers / 4, seed);
    const StringBaseline strings(trade.known);
    const models::CandidateRanker as_it_is(trade.known);
    std::vector<double> times;
    Rivals knows, knows_harsher, supposes, baseline;
    std::cout << makers << " makers, " << trade.known.marks.size() << " marks, " << marks
              << " draws a level, one in five by a stranger\n"
              << "level           who                          top1   top3  brier    ece  auroc\n";
    for (const WearLevel& level : wearLevels()) {
        World plain(trade, strings, level.wear, startingPairs());
        plain.run(marks, seed + 1, nullptr, times);
        printRow(level.name, "true wear", plain.knows);
        printRow(level.name, "nearest string", plain.baseline);
        World harsher(trade, strings, mismatched(level.wear), otherPairs());
        harsher.run(marks, seed + 2, &as_it_is, times);
        printRow(level.name, "harsher: true wear", harsher.knows);
        printRow(level.name, "harsher: mismatched", harsher.supposes);
        printRow(level.name, "harsher: nearest string", harsher.baseline);
        add(knows, plain.knows);
        add(knows_harsher, harsher.knows);
        add(supposes, harsher.supposes);
        add(baseline, plain.baseline);
    }
    printRow("all", "true wear", knows);
    printRow("all", "harsher: true wear", knows_harsher);
    printRow("all", "harsher: mismatched", supposes);
    printRow("all", "nearest string", baseline);
    std::cout << "auroc of the unknown maker where half of the letters can be read:\n";
    printHalf("true wear", knows);
    printHalf("harsher: mismatched", supposes);
    printHalf("nearest string", baseline);
    std::cout << "milliseconds of processor for three lines: median " << percentile(times, 0.5)
              << ", 95th percentile " << percentile(times, 0.95) << " of " << times.size() << "\n";
}
