#include "models/confusion_learning.h"

#include <algorithm>
#include <map>

#include "models/alignment.h"
#include "models/letters.h"

namespace models {

namespace {

// A little below the nine tenths that a table takes, which sums it in another order.
constexpr double most_of_a_letter = 0.899;
constexpr double unlike_cost = 0.6, gap_cost = 0.7, elsewhere_cost = 2;

bool showsLetter(const Cell& cell)
{
    return (cell.state == CellState::Clear || cell.state == CellState::Doubtful) &&
           !cell.alternatives.empty();
}

bool typedBy(const Cell& cell, const std::string& person)
{
    return cell.by == person && cell.state == CellState::Clear && cell.alternatives.size() == 1 &&
           !cell.erased && !cell.struck_over;
}

std::string letterOf(const Cell& cell)
{
    return normalForm(cell.alternatives.front().text);
}

// Of two cells standing for the same place of the stamp.
double joinCost(const Cell& a, const Cell& b)
{
    const bool placed = a.right_px > a.left_px && b.right_px > b.left_px;
    if (placed && (a.right_px <= b.left_px || b.right_px <= a.left_px))
        return elsewhere_cost;
    return showsLetter(a) && showsLetter(b) && letterOf(a) == letterOf(b) ? 0 : unlike_cost;
}

std::vector<AlignedPair> paired(const Line& a, const Line& b)
{
    return alignSequences(
        a.cells.size(), b.cells.size(),
        [&](std::size_t i, std::size_t j) { return joinCost(a.cells[i], b.cells[j]); }, gap_cost);
}

using Counts = std::map<std::string, std::map<std::string, std::size_t>>;  // [truth][seen]

Counts countsOf(const std::vector<TaughtLetter>& letters)
{
    Counts counts;
    for (const TaughtLetter& letter : letters)
        ++counts[letter.truth][letter.seen];
    return counts;
}

// The mean of a Beta distribution that starts at `start` and counts as much as
// letters_before_learning letters, or as corrections_before_learning corrections where that is
// more. A share of nothing stays.
double learntShare(double start, double corrections, double all)
{
    const double before = std::max(start * letters_before_learning, corrections_before_learning);
    return start * (before + corrections) / (before + start * all);
}

// The shares of one letter after learning, all that were listed or seen.
std::map<std::string, double> learntShares(const std::string& truth,
                                           const std::map<std::string, std::size_t>& seen,
                                           const ConfusionTable& start)
{
    std::map<std::string, double> shares;
    for (const auto& [letter, share] : start.takenFor(truth))
        shares[letter] = share;
    double all = 0;
    for (const auto& [letter, count] : seen) {
        all += static_cast<double>(count);
        if (letter != truth)
            shares.emplace(letter, start.probability(truth, letter));
    }
    double sum = 0;
    for (auto& [letter, share] : shares) {
        const auto found = seen.find(letter);
        const double count = found == seen.end() ? 0 : static_cast<double>(found->second);
        sum += share = learntShare(share, count, all);
    }
    if (sum > most_of_a_letter)
        for (auto& [letter, share] : shares)
            share *= most_of_a_letter / sum;
    return shares;
}

}  // namespace

std::vector<TaughtLetter> lettersTaught(const Reading& engines, const Reading& persons)
{
    std::vector<TaughtLetter> taught;
    if (persons.candidates_were_shown != false)
        return taught;
    const std::size_t lines = std::min(engines.lines.size(), persons.lines.size());
    for (std::size_t l = 0; l < lines; ++l)
        for (const AlignedPair& pair : paired(engines.lines[l], persons.lines[l])) {
            if (!pair.first || !pair.second)
                continue;
            const Cell& seen = engines.lines[l].cells[*pair.first];
            const Cell& typed = persons.lines[l].cells[*pair.second];
            if (showsLetter(seen) && typedBy(typed, persons.reader))
                taught.push_back({letterOf(typed), letterOf(seen)});
        }
    return taught;
}

ConfusionTable learnConfusions(const std::vector<TaughtLetter>& letters,
                               const ConfusionTable& start)
{
    ConfusionTable table = start;
    for (const auto& [truth, seen] : countsOf(letters)) {
        // All shares of the letter first grow less, then more, so that they never sum to too much.
        const std::map<std::string, double> shares = learntShares(truth, seen, start);
        for (const bool growing : {false, true})
            for (const auto& [letter, share] : shares)
                if ((share > start.probability(truth, letter)) == growing)
                    table.set(truth, letter, share);
    }
    return table;
}

std::vector<ConfusionChange> confusionChanges(const std::vector<TaughtLetter>& letters,
                                              const ConfusionTable& start)
{
    const ConfusionTable learnt = learnConfusions(letters, start);
    std::vector<ConfusionChange> changes;
    for (const auto& [truth, seen] : countsOf(letters))
        for (const auto& [letter, count] : seen)
            if (letter != truth)
                changes.push_back({truth, letter, start.probability(truth, letter),
                                   learnt.probability(truth, letter), count});
    std::stable_sort(changes.begin(), changes.end(),
                     [](const auto& a, const auto& b) { return a.count > b.count; });
    return changes;
}

}  // namespace models
