#include "models/leiden.h"

#include <algorithm>

#include "models/letters.h"
#include "models/notation_gap.h"

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
    if (const int about = aboutNumber(cell); about > 0)
        return "c." + std::to_string(about);
    const std::string estimate = cell.about ? "c." : "";
    if (!cell.most)
        return estimate + at_least_sign + std::to_string(least);
    const int most = std::max(least, *cell.most);
    if (most == least)
        return estimate + std::to_string(least);
    return estimate + std::to_string(least).append("-").append(std::to_string(most));
}

// Few enough, and counted: a sign for each.
bool isCounted(const Cell& cell)
{
    return !cell.about && cell.most && *cell.most == cell.least && cell.least > 0 &&
           cell.least <= most_signs;
}

std::string tracesText(const Cell& cell)
{
    if (isCounted(cell))
        return std::string(static_cast<std::size_t>(cell.least), '+');
    if (!cell.most && cell.least <= 1)
        return "+ + +";
    return std::string("+ ").append(countText(cell)).append(" +");
}

std::string lostText(const Cell& cell)
{
    if (isOpenGap(cell))
        return open_gap;
    if (isCounted(cell))
        return std::string(1, '[').append(static_cast<std::size_t>(cell.least), '.').append("]");
    return std::string(1, '[').append(countText(cell)).append("]");
}

std::size_t firstCodePointLength(const std::string& letter)
{
    std::size_t length = 1;
    while (length < letter.size() && (static_cast<unsigned char>(letter[length]) & 0xC0) == 0x80)
        ++length;
    return std::min(length, letter.size());
}

// The letter with the signs that stand on it, in the order of their combining classes.
std::string letterText(const Cell& cell)
{
    const std::string letter = normalForm(cell.alternatives.front().text);
    const bool doubtful = cell.state == CellState::Doubtful;
    if (letter == property_arrow)
        return std::string(doubtful ? "(property arrow?)" : "(property arrow)")
            .append(cell.seen_earlier ? low_line : "");
    std::string signs;
    if (doubtful && letter != " ")  // a dot under nothing tells nothing
        signs += dot_below;
    if (cell.seen_earlier)
        signs += low_line;
    return std::string(letter).insert(firstCodePointLength(letter), signs);
}

bool isRead(const Cell& cell)
{
    return cell.state != CellState::Lost && cell.state != CellState::Traces &&
           !cell.alternatives.empty();
}

std::string cellText(const Cell& cell)
{
    if (isRead(cell))
        return letterText(cell);
    std::string text = cell.state == CellState::Lost ? lostText(cell) : tracesText(cell);
    return cell.seen_earlier ? text + low_line : text;
}

// Pairs of signs around a cell, the outermost first; neighbours with the same one share it.
struct Enclosure {
    bool erased = false, struck_over = false, restored = false, doubted = false;

    explicit Enclosure(const Cell& cell)
        : erased(cell.erased),
          struck_over(cell.struck_over),
          restored(cell.state == CellState::Restored),
          doubted(restored && cell.doubted)
    {
    }
};

// How many of the pairs, from the outermost, two neighbours share.
int sharedPairs(const Enclosure& a, const Enclosure& b)
{
    if (a.erased != b.erased)
        return 0;
    if (a.struck_over != b.struck_over)
        return 1;
    return a.restored != b.restored || a.doubted != b.doubted ? 2 : 3;
}

std::string opening(const Enclosure& pairs, int from)
{
    std::string text;
    if (from <= 0 && pairs.erased)
        text += erased_open;
    if (from <= 1 && pairs.struck_over)
        text += struck_open;
    if (from <= 2 && pairs.restored)
        text += "[";
    return text;
}

std::string closing(const Enclosure& pairs, int from)
{
    std::string text;
    if (from <= 2 && pairs.restored)
        text += pairs.doubted ? "?]" : "]";
    if (from <= 1 && pairs.struck_over)
        text += struck_close;
    if (from <= 0 && pairs.erased)
        text += erased_close;
    return text;
}

}  // namespace

std::string toLeiden(const Line& line)
{
    const auto& cells = line.cells;
    std::string text;
    if (line.left_end == LineEnd::CutOff && (cells.empty() || !isOpenGap(cells.front())))
        text += open_gap;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const Enclosure pairs(cells[i]);
        const bool last = i + 1 == cells.size();
        text += opening(pairs, i == 0 ? 0 : sharedPairs(Enclosure(cells[i - 1]), pairs));
        text += cellText(cells[i]);
        text += closing(pairs, last ? 0 : sharedPairs(pairs, Enclosure(cells[i + 1])));
    }
    const bool left_said_it = cells.empty() && line.left_end == LineEnd::CutOff;
    if (line.right_end == LineEnd::CutOff && !left_said_it &&
        (cells.empty() || !isOpenGap(cells.back())))
        text += open_gap;
    return text;
}

}  // namespace models
