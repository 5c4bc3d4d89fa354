#include "models/leiden.h"

#include <algorithm>

#include "models/letters.h"

namespace models {

namespace {

constexpr const char* dot_below = "\xCC\xA3";          // U+0323
constexpr const char* low_line = "\xCC\xB2";           // U+0332, read once, gone now
constexpr const char* erased_open = "\xE2\x9F\xA6";    // U+27E6
constexpr const char* erased_close = "\xE2\x9F\xA7";   // U+27E7
constexpr const char* struck_open = "\xC2\xAB";        // U+00AB
constexpr const char* struck_close = "\xC2\xBB";       // U+00BB
constexpr const char* at_least_sign = "\xE2\x89\xA5";  // U+2265
constexpr const char* open_gap = "[- - -]";
constexpr int most_signs = 12;  // longer stretches print their number

std::string countText(const Cell& cell)
{
    const int least = std::max(0, cell.least);
    if (!cell.most)
        return at_least_sign + std::to_string(least);
    const int most = std::max(least, *cell.most);
    if (most == least)
        return std::to_string(least);
    return std::to_string(least).append("-").append(std::to_string(most));
}

std::string tracesText(const Cell& cell)
{
    if (cell.most && *cell.most == cell.least && cell.least > 0 && cell.least <= most_signs)
        return std::string(static_cast<std::size_t>(cell.least), '+');
    if (!cell.most && cell.least <= 1)
        return "+ + +";
    return std::string("+ ").append(countText(cell)).append(" +");
}

std::string lostText(const Cell& cell)
{
    if (!cell.most && cell.least <= 0)
        return open_gap;
    if (cell.most && *cell.most == cell.least && cell.least > 0 && cell.least <= most_signs)
        return std::string(1, '[').append(static_cast<std::size_t>(cell.least), '.').append("]");
    return std::string(1, '[').append(countText(cell)).append("]");
}

// The cell without brackets of restoration, which its neighbours may share.
std::string bareText(const Cell& cell)
{
    if (cell.state == CellState::Lost)
        return lostText(cell);
    if (cell.state == CellState::Traces || cell.alternatives.empty())
        return tracesText(cell);
    std::string text = normalForm(cell.alternatives.front().text);
    if (cell.state == CellState::Doubtful && text != " ")  // a dot under nothing tells nothing
        text += dot_below;
    return text;
}

bool sharesBrackets(const Cell& a, const Cell& b)
{
    return a.state == CellState::Restored && b.state == CellState::Restored &&
           a.doubted == b.doubted;
}

std::string withMarks(const Cell& cell, std::string text)
{
    if (cell.seen_earlier)
        text += low_line;
    if (cell.struck_over)
        text.insert(0, struck_open).append(struck_close);
    if (cell.erased)
        text.insert(0, erased_open).append(erased_close);
    return text;
}

// Brackets that close and open again side by side are one pair.
std::string joinBrackets(std::string text, const std::string& close_open)
{
    for (std::size_t at = text.find(close_open); at != std::string::npos;
         at = text.find(close_open, at))
        text.erase(at, close_open.size());
    return text;
}

bool isOpenGap(const Cell& cell)
{
    return cell.state == CellState::Lost && !cell.most && cell.least <= 0;
}

}  // namespace

std::string toLeiden(const Line& line)
{
    const auto& cells = line.cells;
    std::string text;
    if (line.left_end == LineEnd::CutOff && (cells.empty() || !isOpenGap(cells.front())))
        text += open_gap;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const bool restored = cells[i].state == CellState::Restored;
        if (restored && (i == 0 || !sharesBrackets(cells[i - 1], cells[i])))
            text += "[";
        text += withMarks(cells[i], bareText(cells[i]));
        if (restored && (i + 1 == cells.size() || !sharesBrackets(cells[i], cells[i + 1])))
            text += cells[i].doubted ? "?]" : "]";
    }
    const bool left_said_it = cells.empty() && line.left_end == LineEnd::CutOff;
    if (line.right_end == LineEnd::CutOff && !left_said_it &&
        (cells.empty() || !isOpenGap(cells.back())))
        text += open_gap;
    text = joinBrackets(text, std::string(erased_close) + erased_open);
    return joinBrackets(text, std::string(struck_close) + struck_open);
}

}  // namespace models
