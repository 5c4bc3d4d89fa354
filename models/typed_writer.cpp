#include <algorithm>
#include <string_view>
#include <utility>

#include "models/letters.h"
#include "models/notation_gap.h"
#include "models/typed_notation.h"

namespace models {

namespace {

// One character so that the parser takes it as it is.
std::string letterText(const std::string& letter)
{
    if (letter.empty() || static_cast<unsigned char>(letter[0]) < 0x20 || letter[0] == 0x7F)
        return "\xEF\xBF\xBD";  // U+FFFD: nothing that can stand on a line
    if (letter == property_arrow)
        return "{arrow}";
    constexpr std::string_view signs = "\\()[]{}+|?";
    if (letter.size() == 1 && signs.find(letter[0]) != std::string_view::npos)
        return std::string(1, '\\') += letter;
    return normalForm(letter);
}

// The letters as they are written, best first, each once: the notation names none twice.
std::vector<std::string> lettersOf(const std::vector<Alternative>& alternatives)
{
    std::vector<std::string> letters;
    for (const Alternative& alternative : alternatives) {
        std::string letter = letterText(alternative.text);
        if (std::find(letters.begin(), letters.end(), letter) == letters.end())
            letters.push_back(std::move(letter));
    }
    return letters;
}

std::string choiceText(const std::vector<std::string>& letters)
{
    std::string text;
    for (const std::string& letter : letters) {
        if (!text.empty())
            text += '|';
        text += letter;
    }
    return text;
}

std::string bracketed(std::string content)
{
    content.insert(content.begin(), '(');
    return content += ')';
}

std::string marksText(const Cell& cell)
{
    std::string text;
    if (!cell.alternatives.empty() &&
        (cell.state == CellState::Traces || cell.state == CellState::Lost))
        text.append("{guess ").append(choiceText(lettersOf(cell.alternatives))).append("}");
    if (cell.erased)
        text += "{erased}";
    if (cell.struck_over)
        text += "{over}";
    if (cell.seen_earlier)
        text += "{earlier}";
    return text;
}

bool isUnread(const Cell& cell)
{
    return cell.state == CellState::Traces || cell.state == CellState::Lost;
}

std::string cellText(const Cell& cell)
{
    const bool one_trace = cell.state == CellState::Traces && cell.least == 1 && cell.most == 1;
    if (one_trace || (!isUnread(cell) && cell.alternatives.empty()))
        return std::string(1, '+') += marksText(cell);
    if (isUnread(cell))
        return writeGap(cell) + marksText(cell);
    if (cell.state == CellState::Clear)
        return letterText(cell.alternatives.front().text) + marksText(cell);
    const std::vector<std::string> letters = lettersOf(cell.alternatives);
    if (letters.size() == 1)
        return letters.front() + "?" + marksText(cell);
    return bracketed(choiceText(letters)) + marksText(cell);
}

bool isRestored(const Cell& cell)
{
    return cell.state == CellState::Restored && !cell.alternatives.empty();
}

// Restored cells from `first` on that share one pair of brackets.
std::size_t restoredEnd(const Line& line, std::size_t first)
{
    const Cell& head = line.cells[first];
    std::size_t end = first + 1;
    while (end < line.cells.size() && marksText(head).empty() && isRestored(line.cells[end]) &&
           line.cells[end].doubted == head.doubted && marksText(line.cells[end]).empty())
        ++end;
    return end;
}

std::string restoredText(const Line& line, std::size_t first, std::size_t end)
{
    std::string content;
    for (std::size_t i = first; i < end; ++i) {
        const std::vector<std::string> letters = lettersOf(line.cells[i].alternatives);
        content += letters.size() == 1 ? letters.front() : bracketed(choiceText(letters));
    }
    const GapForm form = readGap(content);
    if (form.is_gap || !form.fault.empty())
        content.insert(content.begin(), '\\');
    content.insert(content.begin(), '[');
    return content + (line.cells[first].doubted ? "?]" : "]") + marksText(line.cells[first]);
}

bool isClear(const Cell& cell, const char* letter)
{
    return cell.state == CellState::Clear && !cell.alternatives.empty() &&
           cell.alternatives.front().text == letter;
}

// A space is written first, be it clear or doubtful.
bool beginsWithSpace(const Cell& cell)
{
    return !isRestored(cell) && cellText(cell).front() == ' ';
}

// A slash between spaces (or line ends) would part two lines.
bool looksLikeASeparator(const Line& line, std::size_t i)
{
    const auto& cells = line.cells;
    return isClear(cells[i], "/") && (i == 0 || isClear(cells[i - 1], " ")) &&
           (i + 1 == cells.size() || beginsWithSpace(cells[i + 1]));
}

std::string endText(LineEnd end, bool gap_says_cut_off)
{
    if (end == LineEnd::Complete)
        return "|";
    if (end == LineEnd::CutOff)
        return gap_says_cut_off ? "" : "{cut}";
    return gap_says_cut_off ? "{open}" : "";
}

std::string emptyLineText(const Line& line)
{
    if (line.left_end == LineEnd::Unknown && line.right_end == LineEnd::Unknown)
        return "";
    return endText(line.left_end, line.left_end == LineEnd::Unknown) +
           endText(line.right_end, false);
}

}  // namespace

std::string writeTyped(const Line& line)
{
    if (line.cells.empty())
        return emptyLineText(line);
    std::string text = endText(line.left_end, isOpenGap(line.cells.front()));
    for (std::size_t i = 0; i < line.cells.size();) {
        const std::size_t end = isRestored(line.cells[i]) ? restoredEnd(line, i) : i + 1;
        if (isRestored(line.cells[i]))
            text += restoredText(line, i, end);
        else
            text.append(looksLikeASeparator(line, i) ? "\\" : "").append(cellText(line.cells[i]));
        i = end;
    }
    return text + endText(line.right_end, isOpenGap(line.cells.back()));
}

std::string writeTyped(const std::vector<Line>& lines)
{
    if (lines.size() == 1 && writeTyped(lines.front()).empty())
        return "{open}";  // one line without cells is not no line
    std::string text;
    for (std::size_t i = 0; i < lines.size(); ++i)
        text.append(i == 0 ? "" : " / ").append(writeTyped(lines[i]));
    return text;
}

}  // namespace models
