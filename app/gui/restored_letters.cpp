#include "app/gui/restored_letters.h"

#include <algorithm>
#include <limits>

#include "models/typed_notation.h"

namespace gui {

using models::Cell;
using models::CellState;
using models::Line;

namespace {

constexpr double never = std::numeric_limits<double>::infinity();

bool isGone(const Cell& cell)
{
    return cell.state == CellState::Lost || cell.state == CellState::Traces;
}

bool isGap(const std::string& letter)
{
    return letter == " " || letter == ".";
}

// What it costs to take a read cell for this letter: nothing where it is, little where it may be.
double costOf(const Cell& cell, const std::string& letter)
{
    for (std::size_t i = 0; i < cell.alternatives.size(); ++i)
        if (cell.alternatives[i].text == letter)
            return i == 0 ? 0 : 0.4;
    return cell.state == CellState::Clear ? 1.5 : 1;
}

std::vector<std::string> lettersOf(const std::string& mark)
{
    std::vector<std::string> letters;
    const models::ParsedNotation parsed = models::parseTyped(mark);
    for (const Line& line : parsed.lines) {
        if (!letters.empty())
            letters.push_back(" ");
        for (const Cell& cell : line.cells)
            letters.push_back(cell.alternatives.empty() ? std::string()
                                                        : cell.alternatives.front().text);
    }
    return letters;
}

// Which letters, first <= i < end, stand in each cell; a cell that is none of the mark has none.
struct Fit {
    double cost = never;  // per letter of the mark
    std::vector<std::pair<std::size_t, std::size_t>> letters;
};

// The cheapest way to lay the mark along part of the line: cells before and after the mark cost
// little, a lost stretch takes as many letters as it may hold.
class Laying {
public:
    Laying(const Line& line, const std::vector<std::string>& letters)
        : line_(line), letters_(letters), rows_(line.cells.size() + 1), columns_(letters.size() + 1)
    {
        cost_.assign(rows_ * columns_, never);
        from_.assign(rows_ * columns_, {0, 0});
    }

    Fit fit()
    {
        for (std::size_t i = 0; i < rows_; ++i)
            at(i, 0) = 0;  // the mark may begin anywhere in the line
        for (std::size_t i = 0; i < rows_; ++i)
            for (std::size_t k = 0; k < columns_; ++k)
                extend(i, k);
        std::size_t end = 0;
        for (std::size_t i = 0; i < rows_; ++i)
            if (at(i, columns_ - 1) < at(end, columns_ - 1))
                end = i;
        return traced(end);
    }

private:
    double& at(std::size_t cell, std::size_t letter) { return cost_[cell * columns_ + letter]; }

    void reach(std::size_t cell, std::size_t letter, double cost,
               std::pair<std::size_t, std::size_t> from)
    {
        if (cost >= at(cell, letter))
            return;
        at(cell, letter) = cost;
        from_[cell * columns_ + letter] = from;
    }

    void extend(std::size_t i, std::size_t k)
    {
        const double here = at(i, k);
        if (here == never)
            return;
        if (k + 1 < columns_)  // a letter that left no cell
            reach(i, k + 1, here + (isGap(letters_[k]) ? 0.1 : 1.0), {i, k});
        if (i + 1 >= rows_)
            return;
        const Cell& cell = line_.cells[i];
        const bool space = !cell.alternatives.empty() && isGap(cell.alternatives.front().text);
        if (k > 0)  // a cell with no letter behind it
            reach(i + 1, k, here + (space ? 0.1 : 1.0), {i, k});
        if (!isGone(cell)) {
            if (k + 1 < columns_)
                reach(i + 1, k + 1, here + costOf(cell, letters_[k]), {i, k});
            return;
        }
        const std::size_t left = columns_ - 1 - k;
        const auto least = static_cast<std::size_t>(std::max(cell.least, 0));
        const std::size_t most =
            std::min(left, cell.most ? static_cast<std::size_t>(std::max(*cell.most, 0)) : left);
        for (std::size_t count = least; count <= most; ++count)
            reach(i + 1, k + count, here + 0.05 * static_cast<double>(count), {i, k});
    }

    Fit traced(std::size_t end)
    {
        Fit fit;
        fit.cost =
            at(end, columns_ - 1) / static_cast<double>(std::max<std::size_t>(1, columns_ - 1));
        fit.letters.assign(line_.cells.size(), {0, 0});
        if (fit.cost == never)
            return fit;
        for (std::size_t i = end, k = columns_ - 1; k > 0;) {
            const auto [cell, letter] = from_[i * columns_ + k];
            if (cell < i)
                fit.letters[cell] = {letter, k};
            i = cell;
            k = letter;
        }
        return fit;
    }

    const Line& line_;
    const std::vector<std::string>& letters_;
    std::size_t rows_, columns_;
    std::vector<double> cost_;
    std::vector<std::pair<std::size_t, std::size_t>> from_;
};

Cell restoredCell(const Cell& gone, const std::string& letter, std::size_t index, std::size_t count,
                  const std::string& person)
{
    Cell cell = models::clearCell(letter);
    cell.state = CellState::Restored;
    cell.by = person;
    const double each = (gone.right_px - gone.left_px) / static_cast<double>(count);
    cell.left_px = gone.left_px + each * static_cast<double>(index);
    cell.right_px = cell.left_px + each;
    return cell;
}

Line filled(const Line& line, const Fit& fit, const std::vector<std::string>& letters,
            const std::string& person)
{
    Line result = line;
    result.cells.clear();
    for (std::size_t i = 0; i < line.cells.size(); ++i) {
        const auto [first, end] = fit.letters[i];
        const bool known = std::none_of(letters.begin() + static_cast<std::ptrdiff_t>(first),
                                        letters.begin() + static_cast<std::ptrdiff_t>(end),
                                        [](const std::string& letter) { return letter.empty(); });
        if (!isGone(line.cells[i]) || first == end || !known) {
            result.cells.push_back(line.cells[i]);
            continue;
        }
        for (std::size_t k = first; k < end; ++k)
            result.cells.push_back(
                restoredCell(line.cells[i], letters[k], k - first, end - first, person));
    }
    if (result.cells.size() != line.cells.size())
        result.spans.clear();  // they count cells that have moved
    result.certainty.reset();
    return result;
}

}  // namespace

std::optional<std::vector<Line>> linesRestoredFrom(const std::string& mark,
                                                   const std::vector<Line>& lines,
                                                   const std::string& person)
{
    const std::vector<std::string> letters = lettersOf(mark);
    std::optional<std::vector<Line>> restored;
    constexpr double most_cost = 0.6;  // a letter; above, the mark is not this line's
    double least = most_cost;
    for (std::size_t i = 0; i < lines.size() && !letters.empty(); ++i) {
        const Fit fit = Laying(lines[i], letters).fit();
        if (fit.cost >= least)
            continue;
        const Line line = filled(lines[i], fit, letters, person);
        least = fit.cost;
        restored.reset();
        if (line.cells == lines[i].cells)
            continue;  // the mark stands here, and nothing of it is missing
        restored = lines;
        (*restored)[i] = line;
    }
    return restored;
}

}  // namespace gui
