#include "models/merge_readings.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "models/alignment.h"
#include "models/cell_pool.h"
#include "models/line_boxes.h"

namespace models {

namespace {

constexpr double cell_gap_cost = 0.6;  // leaving a cell alone; a pair of strangers costs 1
constexpr double line_gap_cost = 0.5;
constexpr double seen_by_trusted_alone = 0.9, seen_by_other_alone = 0.5;  // lowered by
constexpr double worth_keeping = 0.3;  // a letter that the trusted reader did not see at all

bool isPersons(const Cell& cell)
{
    return !cell.by.empty() && !isEngine(cell.by);
}

// A person's reading on the object or by transcript is the person's whole, whatever `by` says.
bool isPersonsWhole(const Reading& reading)
{
    return !isEngine(reading.reader) &&
           (reading.basis == Basis::ObjectInHand || reading.basis == Basis::Transcript);
}

std::vector<AlignedPair> alignCells(const Line& trusted, const Line& other)
{
    return alignSequences(
        trusted.cells.size(), other.cells.size(),
        [&](std::size_t i, std::size_t j) {
            return cellDistance(trusted.cells[i], other.cells[j]);
        },
        cell_gap_cost);
}

// Mean cost of aligning the cells of two lines, 0 to about 1.
double textDistance(const Line& a, const Line& b)
{
    double cost = 0;
    for (const AlignedPair& pair : alignCells(a, b))
        cost += pair.first && pair.second
                    ? cellDistance(a.cells[*pair.first], b.cells[*pair.second])
                    : cell_gap_cost;
    const std::size_t longer = std::max(a.cells.size(), b.cells.size());
    return longer == 0 ? 0 : cost / static_cast<double>(longer);
}

double lineDistance(const Line& a, const Line& b)
{
    if (hasBox(a) && hasBox(b))
        return 1.2 * (1 - boxOverlap(a.box_px, b.box_px));
    return textDistance(a, b);
}

bool readByPerson(const Line& line)
{
    return std::any_of(line.cells.begin(), line.cells.end(), isPersons);
}

// A letter that only the other reader saw, if it is worth keeping.
std::optional<Cell> loneCell(const Cell& cell)
{
    Cell lone = lessCertain(cell, seen_by_other_alone);
    if (lone.alternatives.empty() || lone.alternatives.front().certainty < worth_keeping)
        return std::nullopt;
    return lone;
}

Line joinLines(const Line& trusted, const Line& other)
{
    Line joined = trusted;
    joined.cells.clear();
    joined.certainty.reset();
    const bool persons = readByPerson(trusted);
    for (const AlignedPair& pair : alignCells(trusted, other)) {
        if (!pair.first) {
            const auto lone = persons ? std::nullopt : loneCell(other.cells[*pair.second]);
            if (lone)
                joined.cells.push_back(*lone);
            continue;
        }
        const Cell& cell = trusted.cells[*pair.first];
        if (isPersons(cell))
            joined.cells.push_back(cell);
        else if (pair.second)
            joined.cells.push_back(poolCells(cell, other.cells[*pair.second]));
        else
            joined.cells.push_back(persons ? cell : lessCertain(cell, seen_by_trusted_alone));
    }
    if (joined.left_end == LineEnd::Unknown)
        joined.left_end = other.left_end;
    if (joined.right_end == LineEnd::Unknown)
        joined.right_end = other.right_end;
    if (!hasBox(joined))
        joined.box_px = other.box_px;
    if (joined.cells.size() != trusted.cells.size())
        joined.spans.clear();  // they count cells that have moved
    return joined;
}

Reading joinReadings(const Reading& trusted, const Reading& other)
{
    Reading joined = trusted;
    joined.lines.clear();
    const auto pairs = alignSequences(
        trusted.lines.size(), other.lines.size(),
        [&](std::size_t i, std::size_t j) {
            return lineDistance(trusted.lines[i], other.lines[j]);
        },
        line_gap_cost);
    for (const AlignedPair& pair : pairs) {
        if (pair.first && pair.second)
            joined.lines.push_back(
                joinLines(trusted.lines[*pair.first], other.lines[*pair.second]));
        else
            joined.lines.push_back(pair.first ? trusted.lines[*pair.first]
                                              : other.lines[*pair.second]);
    }
    return joined;
}

// A person's whole reading with every cell vouched for by that person.
Reading vouchedFor(Reading reading)
{
    if (isPersonsWhole(reading))
        for (Line& line : reading.lines)
            for (Cell& cell : line.cells)
                if (cell.by.empty())
                    cell.by = reading.reader.empty() ? "person" : reading.reader;
    return reading;
}

}  // namespace

Reading mergeReadings(const std::vector<Reading>& readings)
{
    if (readings.empty())
        return {};
    if (readings.size() == 1)
        return readings.front();
    Reading merged = vouchedFor(readings.front());
    std::string names = readings.front().reader;
    for (std::size_t i = 1; i < readings.size(); ++i) {
        merged = joinReadings(vouchedFor(readings[i]), merged);
        if (!readings[i].reader.empty())
            names.append(names.empty() ? "" : " + ").append(readings[i].reader);
    }
    merged.reader = names;
    return merged;
}

}  // namespace models
