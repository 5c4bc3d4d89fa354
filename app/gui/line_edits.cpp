#include "app/gui/line_edits.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

namespace gui {

using models::Cell;
using models::Line;

namespace {

bool isPlaced(const Cell& cell)
{
    return cell.right_px > cell.left_px;
}

models::Box boxAround(const models::Box& a, const models::Box& b)
{
    if (a.width <= 0)
        return b;
    if (b.width <= 0)
        return a;
    const double left = std::min(a.x, b.x), top = std::min(a.y, b.y);
    const double right = std::max(a.x + a.width, b.x + b.width);
    const double bottom = std::max(a.y + a.height, b.y + b.height);
    return {left, top, right - left, bottom - top};
}

// The line's box cut to its own cells, where these have places.
void fitBox(Line& line)
{
    double left = 0, right = 0;
    for (const Cell& cell : line.cells) {
        if (!isPlaced(cell))
            continue;
        left = right > 0 ? std::min(left, cell.left_px) : cell.left_px;
        right = std::max(right, cell.right_px);
    }
    if (right > left && line.box_px.width > 0) {
        line.box_px.x = left;
        line.box_px.width = right - left;
    }
}

}  // namespace

bool turnAlternatives(Cell& cell, int by)
{
    auto& list = cell.alternatives;
    if (list.size() < 2)
        return false;
    std::vector<double> certainties;
    for (const auto& alternative : list)
        certainties.push_back(alternative.certainty);
    if (by > 0)
        std::rotate(list.begin(), list.begin() + 1, list.end());
    else
        std::rotate(list.begin(), list.end() - 1, list.end());
    std::sort(certainties.begin(), certainties.end(), std::greater<>());
    for (std::size_t i = 0; i < list.size(); ++i)
        list[i].certainty = certainties[i];
    return true;
}

void addAlternative(Cell& cell, const std::string& character)
{
    auto& list = cell.alternatives;
    const bool there = std::any_of(list.begin(), list.end(),
                                   [&](const auto& known) { return known.text == character; });
    if (!there)
        list.push_back({character, 0});
    double sum = 0;
    const double least = 1.0 / static_cast<double>(2 * list.size());
    for (auto& alternative : list) {
        alternative.certainty = std::max(alternative.certainty, least);
        sum += alternative.certainty;
    }
    for (auto& alternative : list)
        alternative.certainty /= std::max(sum, 1.0);
    cell.state = models::CellState::Doubtful;
}

bool changeCertainty(Cell& cell, int by)
{
    constexpr double step = 0.1, most = 0.95, least = 0.05;
    auto& list = cell.alternatives;
    const double next = list.size() > 1 ? list[1].certainty : 0;
    const double tenths = std::round(list.front().certainty / step) + by;
    const double wanted = std::clamp(tenths * step, least, most);
    if (by > 0 ? list.front().certainty >= most : wanted < next || list.front().certainty <= least)
        return false;
    double others = 0;
    for (std::size_t i = 1; i < list.size(); ++i)
        others += list[i].certainty;
    list.front().certainty = wanted;
    for (std::size_t i = 1; i < list.size(); ++i)
        list[i].certainty *= std::min(1.0, (1 - wanted) / std::max(others, 1e-9));
    if (cell.state == models::CellState::Clear)
        cell.state = models::CellState::Doubtful;
    return true;
}

bool changeNumber(Cell& cell, int by)
{
    if (cell.most && *cell.most + by < 1)
        return false;
    const int number = cell.most ? *cell.most + by : std::max(1, cell.least);
    cell.least = number;
    cell.most = number;
    return true;
}

double usualLetterWidth(const models::Reading& reading, const Line& line)
{
    std::vector<double> widths;
    for (const Line& other : reading.lines)
        for (const Cell& cell : other.cells)
            if (isPlaced(cell) && cell.most == 1)
                widths.push_back(cell.right_px - cell.left_px);
    if (widths.empty())
        return line.box_px.height * 0.65;
    const auto middle = widths.begin() + static_cast<std::ptrdiff_t>(widths.size() / 2);
    std::nth_element(widths.begin(), middle, widths.end());
    return *middle;
}

void detachLetter(Line& line, std::size_t at, double usual_width_px)
{
    const Cell& stretch = line.cells[at];
    const bool gone =
        stretch.state == models::CellState::Lost || stretch.state == models::CellState::Traces;
    if (!gone || stretch.most == 1)
        return;
    insertEmptyCell(line, at);
    Cell &letter = line.cells[at], &rest = line.cells[at + 1];
    const double width = rest.right_px - rest.left_px;
    const double share = rest.most ? width / *rest.most : usual_width_px;
    letter.left_px = rest.left_px;
    letter.right_px = rest.left_px + std::min(share, width);
    rest.left_px = letter.right_px;
    if (rest.most)
        rest.most = *rest.most - 1;
    const int fewest = rest.state == models::CellState::Traces ? 1 : 0;
    rest.least = std::max(rest.least - 1, fewest);
}

void insertEmptyCell(Line& line, std::size_t at)
{
    Cell cell;
    cell.state = models::CellState::Traces;
    line.cells.insert(line.cells.begin() + static_cast<std::ptrdiff_t>(at), cell);
    for (auto& span : line.spans) {
        span.first_cell += span.first_cell >= at ? 1 : 0;
        span.end_cell += span.end_cell > at ? 1 : 0;
    }
    line.certainty.reset();
}

void eraseCell(Line& line, std::size_t at)
{
    line.cells.erase(line.cells.begin() + static_cast<std::ptrdiff_t>(at));
    for (auto& span : line.spans) {
        span.first_cell -= span.first_cell > at ? 1 : 0;
        span.end_cell -= span.end_cell > at ? 1 : 0;
    }
    std::erase_if(line.spans, [](const auto& span) { return span.first_cell >= span.end_cell; });
    line.certainty.reset();
}

void joinCells(Line& line, std::size_t at)
{
    const Cell after = line.cells[at + 1];
    Cell& joined = line.cells[at];
    if (isPlaced(after)) {
        joined.left_px = isPlaced(joined) ? std::min(joined.left_px, after.left_px) : after.left_px;
        joined.right_px = std::max(joined.right_px, after.right_px);
    }
    eraseCell(line, at + 1);
}

void splitCellInTwo(Line& line, std::size_t at)
{
    insertEmptyCell(line, at + 1);
    Cell &first = line.cells[at], &second = line.cells[at + 1];
    if (!isPlaced(first))
        return;
    second.right_px = first.right_px;
    first.right_px = second.left_px = (first.left_px + first.right_px) / 2;
}

void splitLineAt(models::Reading& reading, std::size_t index, std::size_t at)
{
    Line& above = reading.lines[index];
    Line below = above;
    const auto cut = static_cast<std::ptrdiff_t>(at);
    below.cells.erase(below.cells.begin(), below.cells.begin() + cut);
    above.cells.erase(above.cells.begin() + cut, above.cells.end());
    for (Line* line : {&above, &below}) {
        line->spans.clear();
        line->certainty.reset();
        fitBox(*line);
    }
    above.right_end = models::LineEnd::Unknown;
    below.left_end = models::LineEnd::Unknown;
    reading.lines.insert(reading.lines.begin() + static_cast<std::ptrdiff_t>(index) + 1, below);
}

void joinWithNext(models::Reading& reading, std::size_t index)
{
    Line& above = reading.lines[index];
    const Line below = reading.lines[index + 1];
    above.cells.insert(above.cells.end(), below.cells.begin(), below.cells.end());
    above.right_end = below.right_end;
    above.spans.clear();
    above.certainty.reset();
    above.box_px = boxAround(above.box_px, below.box_px);
    reading.lines.erase(reading.lines.begin() + static_cast<std::ptrdiff_t>(index) + 1);
}

bool isWorthALook(const Cell& cell, const std::string& person)
{
    constexpr double sure_from = 0.9;
    if (cell.by == person)
        return false;
    return cell.state != models::CellState::Clear || cell.alternatives.empty() ||
           cell.alternatives.front().certainty < sure_from;
}

CellPlace placeAcross(const models::Reading& reading, CellPlace from, int by)
{
    const bool outside = by < 0 ? from.line == 0 : from.line + 1 >= reading.lines.size();
    if (outside)
        return from;
    const std::size_t to = by < 0 ? from.line - 1 : from.line + 1;
    const auto& here = reading.lines[from.line].cells;
    const auto& there = reading.lines[to].cells;
    if (from.cell >= here.size() || !isPlaced(here[from.cell]))
        return {to, std::min(from.cell, there.size())};
    const double middle = (here[from.cell].left_px + here[from.cell].right_px) / 2;
    CellPlace nearest{to, std::min(from.cell, there.size())};
    double least = -1;
    for (std::size_t i = 0; i < there.size(); ++i) {
        const double away = std::abs((there[i].left_px + there[i].right_px) / 2 - middle);
        if (isPlaced(there[i]) && (least < 0 || away < least)) {
            least = away;
            nearest.cell = i;
        }
    }
    return nearest;
}

}  // namespace gui
