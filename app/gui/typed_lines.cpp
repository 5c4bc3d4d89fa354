#include "app/gui/typed_lines.h"

#include <algorithm>
#include <optional>

namespace gui {

using models::Cell;
using models::Line;

namespace {

// Alike in what the typed notation can say.
bool sayTheSame(const Cell& a, const Cell& b)
{
    const auto letters = [](const Cell& cell) {
        std::vector<std::string> texts;
        const bool clear = cell.state == models::CellState::Clear;
        for (const models::Alternative& alternative : cell.alternatives)
            if (texts.empty() || !clear)  // of a clear cell only the first is written
                texts.push_back(alternative.text);
        return texts;
    };
    return a.state == b.state && a.least == b.least && a.most == b.most && a.doubted == b.doubted &&
           a.erased == b.erased && a.struck_over == b.struck_over &&
           a.seen_earlier == b.seen_earlier && letters(a) == letters(b);
}

// For each new element the old one that it is, in order, as many as can be (longest common
// subsequence).
template <typename T, typename Same>
std::vector<std::optional<std::size_t>> matched(const std::vector<T>& before,
                                                const std::vector<T>& after, const Same& same)
{
    const std::size_t rows = before.size(), columns = after.size();
    std::vector<std::vector<int>> length(rows + 1, std::vector<int>(columns + 1, 0));
    for (std::size_t i = rows; i-- > 0;)
        for (std::size_t k = columns; k-- > 0;)
            length[i][k] = same(before[i], after[k]) ? length[i + 1][k + 1] + 1
                                                     : std::max(length[i + 1][k], length[i][k + 1]);
    std::vector<std::optional<std::size_t>> match(columns);
    for (std::size_t i = 0, k = 0; i < rows && k < columns;) {
        if (same(before[i], after[k]))
            match[k++] = i++;
        else
            length[i + 1][k] >= length[i][k + 1] ? ++i : ++k;
    }
    return match;
}

// Cells first <= i < end of `line` share the room of the old cells from <= i < to.
void shareRoom(Line& line, std::size_t first, std::size_t end, const Line& before, std::size_t from,
               std::size_t to)
{
    double left = 0, right = 0;
    for (std::size_t i = from; i < to; ++i)
        if (before.cells[i].right_px > before.cells[i].left_px) {
            left = right > 0 ? left : before.cells[i].left_px;
            right = before.cells[i].right_px;
        }
    if (right <= left)
        return;
    const double each = (right - left) / static_cast<double>(end - first);
    for (std::size_t i = first; i < end; ++i) {
        line.cells[i].left_px = left + each * static_cast<double>(i - first);
        line.cells[i].right_px = line.cells[i].left_px + each;
    }
}

Line placedLine(const Line& before, Line typed, const std::string& person)
{
    const auto match = matched(before.cells, typed.cells, sayTheSame);
    Line line = before;
    line.cells = std::move(typed.cells);
    line.left_end = typed.left_end;
    line.right_end = typed.right_end;
    std::size_t old = 0;
    bool changed = line.cells.size() != before.cells.size();
    for (std::size_t i = 0; i < line.cells.size();) {
        if (match[i]) {
            line.cells[i] = before.cells[*match[i]];
            old = *match[i++] + 1;
            continue;
        }
        std::size_t end = i;
        for (; end < line.cells.size() && !match[end]; ++end)
            line.cells[end].by = person;
        const std::size_t to = end < line.cells.size() ? *match[end] : before.cells.size();
        shareRoom(line, i, end, before, old, to);
        changed = true;
        i = end;
    }
    if (changed)
        line.certainty.reset();
    if (line.cells.size() != before.cells.size())
        line.spans.clear();  // they count cells that have moved
    return line;
}

Line newLine(Line typed, const std::string& person)
{
    for (Cell& cell : typed.cells)
        cell.by = person;
    return typed;
}

}  // namespace

std::vector<Line> withPlacesOf(const std::vector<Line>& before, const std::vector<Line>& typed,
                               const std::string& person)
{
    const auto same_cells = [](const Line& a, const Line& b) {
        return std::equal(a.cells.begin(), a.cells.end(), b.cells.begin(), b.cells.end(),
                          sayTheSame);
    };
    const auto match = matched(before, typed, same_cells);
    std::vector<Line> lines;
    std::size_t old = 0;  // lines before this one have been used
    for (std::size_t i = 0; i < typed.size(); ++i) {
        if (match[i]) {
            lines.push_back(placedLine(before[*match[i]], typed[i], person));
            old = *match[i] + 1;
            continue;
        }
        // A changed line is taken for the old one that no other line is.
        const auto next = std::find_if(match.begin() + static_cast<std::ptrdiff_t>(i), match.end(),
                                       [](const auto& one) { return one.has_value(); });
        const std::size_t limit = next == match.end() ? before.size() : **next;
        lines.push_back(old < limit ? placedLine(before[old], typed[i], person)
                                    : newLine(typed[i], person));
        old = std::min(old + 1, limit);
    }
    return lines;
}

}  // namespace gui
