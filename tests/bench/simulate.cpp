#include <cstdlib>
#include <ctime>
#include <iomanip>
#include <iostream>
#include <sstream>
#include <string>

#include "models/candidates.h"
#include "tests/bench/simulate_baseline.h"
#include "tests/bench/simulate_scores.h"
#include "tests/bench/simulate_settling.h"
#include "tests/bench/simulate_trade.h"
#include "tests/bench/simulate_wear.h"

// How well makers are told from worn marks, in a made-up trade: simulate [MARKS] [MAKERS] [SEED],
// else 200 marks a level, 10,000 makers. At each of five levels of wear, on the same marks: the
// ranking with the true rates of error, the nearest mark by edit distance; and where the wear is
// other than the ranking supposes, the ranking with the true rates (the ceiling), with all of them
// but the table of look-alikes, and as it is.
namespace {

// From this normalised distance on, the baseline says that nobody known made it.
constexpr double baseline_unknown_from = 0.5;
// Half of a mark's letters can be read.
constexpr double half_from = 0.4, half_to = 0.6;
// Of the marks, those whose settling letter is read too: it takes three more rankings.
constexpr int one_settled_in = 4;

struct Rivals {
    AnswerScores scores;
    Separation unknown, unknown_at_half, unknown_names_at_half, unknown_from_half;

    void add(const models::CandidateList& list, const SimulatedMark& mark)
    {
        scores.add(list, mark.maker_id);
        const bool stranger = mark.maker_id.empty();
        unknown.add(list.unknown_maker, stranger);
        if (mark.legible >= 0.5)
            unknown_from_half.add(list.unknown_maker, stranger);
        if (mark.legible < half_from || mark.legible > half_to)
            return;
        unknown_at_half.add(list.unknown_maker, stranger);
        if (mark.names)
            unknown_names_at_half.add(list.unknown_maker, stranger);
    }

    void add(const Rivals& others)
    {
        scores.add(others.scores);
        unknown.add(others.unknown);
        unknown_at_half.add(others.unknown_at_half);
        unknown_names_at_half.add(others.unknown_names_at_half);
        unknown_from_half.add(others.unknown_from_half);
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
          knowing_(trade.known, errorsOf(wear, look_alikes)),
          without_table_(trade.known, errorsWithoutTable(wear))
    {
        options_.unknown_prior = 0.2;
    }

    // `supposing` ranks as if the wear were another; nullptr for none.
    void run(int marks, std::uint32_t seed, const models::CandidateRanker* supposing)
    {
        Dice dice(seed), lots(seed + 1000);
        for (int i = 0; i < marks; ++i) {
            const SimulatedMark mark = simulateMark(trade_, wear_, look_alikes_, dice);
            const std::clock_t start = std::clock();
            const models::CandidateList list = knowing_.rank({{mark.reading}, ""}, options_);
            if (mark.reading.lines.size() == 3)
                times.push_back(millisecondsSince(start));
            knows.add(list, mark);
            if (supposing) {
                supposes.add(supposing->rank({{mark.reading}, ""}, options_), mark);
                lacks_table.add(without_table_.rank({{mark.reading}, ""}, options_), mark);
            } else if (i % one_settled_in == 0)
                settling.add(knowing_, mark, options_, lots);
            baseline.add(asList(strings_.nearest(mark.reading)), mark);
        }
    }

    Rivals knows, lacks_table, supposes, baseline;
    SettlingGain settling;
    std::vector<double> times;  // milliseconds of processor, of marks of three lines

private:
    const SimulatedTrade& trade_;
    const StringBaseline& strings_;
    const Wear wear_;
    const std::vector<LookAlikePair> look_alikes_;
    models::CandidateRanker knowing_, without_table_;
    models::CandidateOptions options_;
};

// Our errors against the baseline's on the same draws.
void printAgainst(const std::string& who, const Rivals& ours, const Rivals& baseline)
{
    const double errs = 1 - ours.scores.top1(), baseline_errs = 1 - baseline.scores.top1();
    std::cout << "    " << std::left << std::setw(38) << who << std::right << "errs " << errs
              << ", nearest string " << baseline_errs << ": " << errs / baseline_errs << "\n";
}

// First answers that are right, in points of a hundred.
double pointsBelow(const Rivals& ours, const Rivals& ceiling)
{
    return 100 * (ceiling.scores.top1() - ours.scores.top1());
}

// Which needs known makers and strangers.
std::string areaInWords(const Separation& separation)
{
    std::ostringstream text;
    text << std::fixed << std::setprecision(3);
    if (separation.hasBoth())
        text << separation.area();
    else
        text << "-";
    text << " of " << separation.count();
    return text.str();
}

void printHalf(const std::string& who, const Rivals& rivals)
{
    std::cout << "    " << std::left << std::setw(38) << who << std::right
              << areaInWords(rivals.unknown_at_half) << "; of marks that hold a name "
              << areaInWords(rivals.unknown_names_at_half) << "; half or more can be read "
              << areaInWords(rivals.unknown_from_half) << "\n";
}

void printReliability(const std::string& who, const AnswerScores& scores)
{
    std::cout << "    " << who << ": mean gap " << scores.calibrationError() << ", by chance alone "
              << scores.calibrationErrorByChance() << "\n";
    for (const AnswerScores::Bin& bin : scores.reliability())
        if (bin.count > 0)
            std::cout << "        " << bin.given / bin.count << "  " << bin.right / bin.count
                      << "  of " << static_cast<int>(bin.count) << "\n";
}

void printSettling(const std::string& level, const SettlingGain& gain)
{
    constexpr double least_gain = 0.005;  // below it a quotient says nothing
    std::cout << "    " << std::left << std::setw(38) << level << std::right << gain.before()
              << std::showpos << ", by the settling letter " << gain.bySettling()
              << ", by one taken by lot " << gain.byLot() << std::noshowpos;
    if (gain.byLot() >= least_gain)
        std::cout << ": " << gain.bySettling() / gain.byLot() << " times";
    std::cout << ", of " << gain.count() << "\n";
}

// All levels together.
struct Sums {
    Rivals knows, ceiling, lacks_table, supposes, baseline, baseline_beside;
    SettlingGain settling;
    std::vector<double> times;
};

void runLevel(const WearLevel& level, const SimulatedTrade& trade, const StringBaseline& strings,
              const models::CandidateRanker& as_it_is, int marks, std::uint32_t seed, Sums& sums)
{
    World plain(trade, strings, level.wear, startingPairs());
    plain.run(marks, seed + 1, nullptr);
    printRow(level.name, "true wear", plain.knows);
    printRow(level.name, "nearest string", plain.baseline);
    World other(trade, strings, mismatched(level.wear), otherPairs());
    other.run(marks, seed + 2, &as_it_is);
    printRow(level.name, "mismatch: ceiling", other.knows);
    printRow(level.name, "mismatch: without table", other.lacks_table);
    printRow(level.name, "mismatch: as it is", other.supposes);
    printRow(level.name, "mismatch: nearest string", other.baseline);
    printAgainst("true wear", plain.knows, plain.baseline);
    printAgainst("mismatch", other.supposes, other.baseline);
    std::cout << "    mismatch: below the ceiling by " << pointsBelow(other.supposes, other.knows)
              << " points; one who lacks only the "
              << "table of look-alikes by " << pointsBelow(other.lacks_table, other.knows) << "\n";
    printSettling("mean probability of the truth", plain.settling);
    std::cout << "    three lines, milliseconds: median " << percentile(plain.times, 0.5)
              << ", 95th percentile " << percentile(plain.times, 0.95) << "\n";
    sums.knows.add(plain.knows);
    sums.baseline.add(plain.baseline);
    sums.ceiling.add(other.knows);
    sums.lacks_table.add(other.lacks_table);
    sums.supposes.add(other.supposes);
    sums.baseline_beside.add(other.baseline);
    sums.settling.add(plain.settling);
    sums.times.insert(sums.times.end(), plain.times.begin(), plain.times.end());
}

void printSums(const Sums& sums)
{
    printRow("all", "true wear", sums.knows);
    printRow("all", "nearest string", sums.baseline);
    printRow("all", "mismatch: ceiling", sums.ceiling);
    printRow("all", "mismatch: without table", sums.lacks_table);
    printRow("all", "mismatch: as it is", sums.supposes);
    printRow("all", "mismatch: nearest string", sums.baseline_beside);
    std::cout << "the first answer: probability given, came true, of how many\n";
    printReliability("true wear", sums.knows.scores);
    printReliability("mismatch", sums.supposes.scores);
    std::cout << "auroc of the unknown maker where half of the letters can be read:\n";
    printHalf("true wear", sums.knows);
    printHalf("mismatch", sums.supposes);
    printHalf("nearest string", sums.baseline);
    std::cout << "reading one more letter:\n";
    printSettling("mean probability of the truth", sums.settling);
    std::cout << "milliseconds of processor for three lines: median " << percentile(sums.times, 0.5)
              << ", 95th percentile " << percentile(sums.times, 0.95) << " of " << sums.times.size()
              << "\n";
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
    Sums sums;
    std::cout << makers << " makers, " << trade.known.marks.size() << " marks, " << marks
              << " draws a level, one in five by a stranger\n"
              << "level           who                          top1   top3  brier    ece  auroc\n";
    for (const WearLevel& level : wearLevels()) {
        runLevel(level, trade, strings, as_it_is, marks, seed, sums);
        std::cout.flush();
    }
    printSums(sums);
}
