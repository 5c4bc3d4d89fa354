#include "models/confusion_learning.h"

#include <algorithm>
#include <map>

#include "models/alignment.h"
#include "models/letters.h"
#include "models/line_boxes.h"

namespace models {

namespace {

// A little below the nine tenths that a table takes, which sums it in another order.
constexpr double most_of_a_letter = 0.899;
constexpr double unlike_cost = 0.6, gap_cost = 0.7, elsewhere_cost = 2;  // of cells
constexpr double line_gap_cost = 0.5, other_line_cost = 2;
constexpr double least_overlap = 0.5;  // of the boxes of one line
// Of the letters of the shorter line, how many at least are the same in both: where only the text
// tells that two lines are one, and where they stand in one place too.
constexpr double alike_by_text = 1.0 / 2, alike_by_place = 1.0 / 3;

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

// Full stops and spaces stand in any line.
bool tellsLine(const Cell& cell)
{
    return showsLetter(cell) && letterOf(cell) != "." && letterOf(cell) != "," &&
           letterOf(cell) != " ";
}

std::size_t tellingCells(const Line& line)
{
    return static_cast<std::size_t>(std::count_if(line.cells.begin(), line.cells.end(), tellsLine));
}

// What it costs to take two lines for one: by how little they are alike, 0 to 0.7, or far too much
// where they are not one. A line typed in the place of another that was taken out keeps its box, so
// that the place alone does not say it, except of as many letters.
double lineCost(const Line& a, const Line& b)
{
    double cost = 0, alike = 0;
    for (const AlignedPair& pair : paired(a, b)) {
        const Cell* one = pair.first ? &a.cells[*pair.first] : nullptr;
        const Cell* other = pair.second ? &b.cells[*pair.second] : nullptr;
        cost += one && other ? joinCost(*one, *other) : gap_cost;
        if (one && other && tellsLine(*one) && tellsLine(*other) &&
            sameButCase(letterOf(*one), letterOf(*other)))
            ++alike;
    }
    const std::size_t letters = tellingCells(a), others = tellingCells(b);
    const bool placed = hasBox(a) && hasBox(b);
    const double least =
        (placed ? alike_by_place : alike_by_text) * static_cast<double>(std::min(letters, others));
    const bool one_line = placed ? boxOverlap(a.box_px, b.box_px) >= least_overlap &&
                                       (alike >= least || letters == others)
                                 : alike > 0 && alike >= least;
    if (!one_line)
        return other_line_cost;
    return cost / static_cast<double>(std::max({a.cells.size(), b.cells.size(), std::size_t{1}}));
}

std::vector<AlignedPair> pairedLines(const Reading& a, const Reading& b)
{
    return alignSequences(
        a.lines.size(), b.lines.size(),
        [&](std::size_t i, std::size_t j) { return lineCost(a.lines[i], b.lines[j]); },
        line_gap_cost);
}

// What one line teaches, of an engine and of a person.
void addTaught(const Line& engines, const Line& persons, const std::string& person,
               std::vector<TaughtLetter>& taught)
{
    for (const AlignedPair& pair : paired(engines, persons)) {
        if (!pair.first || !pair.second)
            continue;
        const Cell& seen = engines.cells[*pair.first];
        const Cell& typed = persons.cells[*pair.second];
        if (showsLetter(seen) && typedBy(typed, person))
            taught.push_back({letterOf(typed), letterOf(seen)});
    }
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
    for (const AlignedPair& pair : pairedLines(engines, persons))
        if (pair.first && pair.second)
            addTaught(engines.lines[*pair.first], persons.lines[*pair.second], persons.reader,
                      taught);
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
