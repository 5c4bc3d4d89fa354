#include "models/reading.h"

#include <utility>

namespace models {

namespace {

constexpr const char* unreadable_sign = "\xEF\xBF\xBD";  // U+FFFD
constexpr const char* gap_sign = "\xE2\x80\xA6";         // U+2026

bool isUnreadable(const Cell& cell)
{
    return cell.alternatives.empty() || cell.state == CellState::Lost ||
           cell.state == CellState::Traces;
}

}  // namespace

bool isEngine(const std::string& by)
{
    return by.rfind("tesseract", 0) == 0 || by.rfind("line-reader", 0) == 0;
}

Cell clearCell(std::string character)
{
    Cell cell;
    cell.alternatives.push_back({std::move(character), 1.0});
    return cell;
}

std::string plainText(const Line& line)
{
    std::string text;
    for (const Cell& cell : line.cells) {
        if (!isUnreadable(cell)) {
            text += cell.alternatives.front().text;
        } else if (cell.most && *cell.most == cell.least) {
            for (int i = 0; i < cell.least; ++i)
                text += unreadable_sign;
        } else {
            text += gap_sign;
        }
    }
    return text;
}

double lineCertainty(const Line& line)
{
    if (line.certainty)
        return *line.certainty;
    if (line.cells.empty())
        return 0;
    double product = 1;
    for (const Cell& cell : line.cells) {
        if (isUnreadable(cell))
            return 0;
        product *= cell.alternatives.front().certainty;
    }
    return product;
}

}  // namespace models
