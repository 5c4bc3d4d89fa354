#include "models/text_match.h"

#include <stdexcept>

#include "models/cell_weights.h"
#include "models/text_alignment.h"

namespace models {

namespace {

void checkRate(double rate, const char* name)
{
    if (!(rate >= 0 && rate <= 1))
        throw std::invalid_argument(std::string(name) + " must be 0 to 1");
}

}  // namespace

double logProbability(const Line& line, const std::string& truth, const ConfusionTable& confusions,
                      const MatchOptions& options)
{
    checkRate(options.insert_rate, "MatchOptions.insert_rate");
    checkRate(options.skip_rate, "MatchOptions.skip_rate");
    LetterIds ids;
    const MatchText text = makeMatchText(truth, ids, options.skip_rate);
    ReadingErrors errors;
    errors.confusions = confusions;
    const std::vector<CellWeights> weights = weighCells(line.cells, ids, errors);
    const GapRates rates(options.insert_rate);
    std::vector<AlignedCell> cells;
    for (const CellWeights& cell : weights)
        cells.push_back({&cell, 1, strayWeight(cell, rates)});
    AlignmentPlan plan;
    plan.entry.assign(cells.size() + 1, 0);
    plan.exit.assign(cells.size() + 1, 0);
    plan.entry.front() = plan.exit.back() = 1;
    // A text that may be cut need not be: whole and cut are equally likely.
    plan.cut_left = options.open_left ? 0.5 : 0;
    plan.cut_right = options.open_right ? 0.5 : 0;
    return logAlignmentSum(cells, text, plan, rates);
}

}  // namespace models
