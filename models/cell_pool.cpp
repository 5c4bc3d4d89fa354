#include "models/cell_pool.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "models/confusion.h"

namespace models {

namespace {

constexpr double characters_on_marks = 40;
// Readers look at the same pixels, so that two are worth less than two independent ones: their
// evidence is tempered. A start, to be measured against confirmed readings.
constexpr double tempering = 0.75;
constexpr double least_left_over = 0.02;     // a reader is never quite sure
constexpr double clear_from = 0.7;           // certainty from which a pooled letter is clear
constexpr double least_alternative = 0.005;  // below that it is not worth naming

bool isUnread(const Cell& cell)
{
    return cell.alternatives.empty() || cell.state == CellState::Lost ||
           cell.state == CellState::Traces;
}

double certaintyOf(const Cell& cell, const std::string& letter)
{
    double sum = 0;
    for (const Alternative& alternative : cell.alternatives)
        if (alternative.text == letter)
            sum += alternative.certainty;
    return sum;
}

double namedSum(const Cell& cell)
{
    double sum = 0;
    for (const Alternative& alternative : cell.alternatives)
        sum += alternative.certainty;
    return sum;
}

double textDistance(const Cell& a, const Cell& b)
{
    if (isUnread(a) || isUnread(b))
        return isUnread(a) && isUnread(b) ? 0.1 : 0.5;
    double agreement = 0, look_alike = 0;
    for (const Alternative& one : a.alternatives) {
        agreement += std::min(one.certainty, certaintyOf(b, one.text));
        for (const Alternative& other : b.alternatives)
            look_alike =
                std::max(look_alike, ConfusionTable::published().probability(one.text, other.text));
    }
    const double named = std::min(namedSum(a), namedSum(b));
    const double shared = named > 0 ? std::min(1.0, agreement / named) : 0;
    return 1 - std::max(shared, std::min(0.4, 20 * look_alike));
}

// Share of the shorter extent that both cover.
double extentOverlap(const Cell& a, const Cell& b)
{
    const double both = std::min(a.right_px, b.right_px) - std::max(a.left_px, b.left_px);
    const double shorter = std::min(a.right_px - a.left_px, b.right_px - b.left_px);
    return shorter > 0 ? std::clamp(both / shorter, 0.0, 1.0) : 0;
}

bool hasExtent(const Cell& cell)
{
    return cell.right_px > cell.left_px;
}

std::vector<std::string> lettersOfBoth(const Cell& a, const Cell& b)
{
    std::vector<std::string> letters;
    for (const Cell* cell : {&a, &b})
        for (const Alternative& alternative : cell->alternatives)
            if (std::find(letters.begin(), letters.end(), alternative.text) == letters.end())
                letters.push_back(alternative.text);
    return letters;
}

// One reader's evidence for a letter against its prior, tempered.
double evidence(const Cell& cell, const std::string& letter)
{
    const double left_over = std::max(least_left_over, 1 - namedSum(cell));
    const double q = std::max(certaintyOf(cell, letter), left_over / characters_on_marks);
    return std::pow(q * characters_on_marks, tempering);
}

std::vector<Alternative> pooledAlternatives(const Cell& a, const Cell& b)
{
    const std::vector<std::string> letters = lettersOfBoth(a, b);
    std::vector<Alternative> pooled;
    double sum = 0;
    for (const std::string& letter : letters) {
        pooled.push_back({letter, evidence(a, letter) * evidence(b, letter) / characters_on_marks});
        sum += pooled.back().certainty;
    }
    // All letters that neither named, as one.
    const double rest_a = std::max(least_left_over, 1 - namedSum(a));
    const double rest_b = std::max(least_left_over, 1 - namedSum(b));
    sum += std::pow(rest_a * rest_b, tempering);
    for (Alternative& alternative : pooled)
        alternative.certainty /= sum;
    std::stable_sort(pooled.begin(), pooled.end(), [](const Alternative& x, const Alternative& y) {
        return x.certainty > y.certainty;
    });
    const auto small = std::find_if(pooled.begin() + 1, pooled.end(), [](const Alternative& one) {
        return one.certainty < least_alternative;
    });
    pooled.erase(small, pooled.end());
    return pooled;
}

CellState stateOf(const std::vector<Alternative>& alternatives)
{
    return alternatives.front().certainty >= clear_from ? CellState::Clear : CellState::Doubtful;
}

}  // namespace

double cellDistance(const Cell& a, const Cell& b)
{
    const double text = textDistance(a, b);
    if (!hasExtent(a) || !hasExtent(b))
        return text;
    return 0.5 * text + 0.5 * (1 - extentOverlap(a, b));
}

Cell lessCertain(Cell cell, double factor)
{
    for (Alternative& alternative : cell.alternatives)
        alternative.certainty *= factor;
    if (!isUnread(cell) && cell.state != CellState::Restored)
        cell.state = stateOf(cell.alternatives);
    return cell;
}

Cell poolCells(const Cell& trusted, const Cell& other)
{
    Cell pooled = trusted;
    if (!hasExtent(pooled)) {
        pooled.left_px = other.left_px;
        pooled.right_px = other.right_px;
    }
    if (isUnread(trusted) && isUnread(other))
        return pooled;
    if (isUnread(trusted) || isUnread(other)) {
        Cell read = lessCertain(isUnread(trusted) ? other : trusted, 0.8);
        read.left_px = pooled.left_px;
        read.right_px = pooled.right_px;
        return read;
    }
    pooled.alternatives = pooledAlternatives(trusted, other);
    pooled.state = stateOf(pooled.alternatives);
    const std::string& best = pooled.alternatives.front().text;
    if (certaintyOf(other, best) > certaintyOf(trusted, best))
        pooled.by = other.by;
    return pooled;
}

}  // namespace models
