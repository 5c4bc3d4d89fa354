#include "tests/models/random_reading.h"

#include <algorithm>
#include <string>

#include "models/notation_gap.h"

namespace {

int numberUpTo(std::mt19937& random, int most)
{
    return std::uniform_int_distribution<int>(0, most)(random);
}

bool oneIn(std::mt19937& random, int n)
{
    return numberUpTo(random, n - 1) == 0;
}

std::string randomLetter(std::mt19937& random)
{
    static const std::vector<std::string> letters = {"A",
                                                     "B",
                                                     "H",
                                                     "&",
                                                     "0",
                                                     "1",
                                                     "4",
                                                     "9",
                                                     ".",
                                                     ",",
                                                     "'",
                                                     "/",
                                                     " ",
                                                     "-",
                                                     "~",
                                                     "?",
                                                     "+",
                                                     "|",
                                                     "\\",
                                                     "(",
                                                     ")",
                                                     "[",
                                                     "]",
                                                     "{",
                                                     "}",
                                                     "e",
                                                     "\xC3\x89",
                                                     "\xE2\x86\x91",
                                                     "\xE2\x80\xA6",
                                                     "A\xCC\xA3",
                                                     "\xE2\x80\x93",
                                                     "\xF0\x9D\x90\x80"};
    return letters[static_cast<std::size_t>(
        numberUpTo(random, static_cast<int>(letters.size()) - 1))];
}

std::vector<models::Alternative> randomAlternatives(std::mt19937& random, int most)
{
    std::vector<models::Alternative> alternatives;
    for (int i = 0; i < most; ++i) {
        const std::string letter = randomLetter(random);
        const bool named = std::any_of(alternatives.begin(), alternatives.end(),
                                       [&](const auto& a) { return a.text == letter; });
        if (!named)
            alternatives.push_back({letter, 0.1});
    }
    return alternatives;
}

models::Cell randomCell(std::mt19937& random)
{
    models::Cell cell;
    cell.state = static_cast<models::CellState>(numberUpTo(random, 4));
    if (cell.state == models::CellState::Traces || cell.state == models::CellState::Lost) {
        cell.least = numberUpTo(random, 3) * numberUpTo(random, 6);
        cell.most = std::max(1, cell.least + numberUpTo(random, 1) * numberUpTo(random, 4));
        if (oneIn(random, 3))
            cell.most = std::nullopt;
        if (oneIn(random, 6))
            cell = models::aboutCell(cell.state, 1 + numberUpTo(random, 40));
        if (oneIn(random, 6))
            cell.alternatives = randomAlternatives(random, 2);
    } else {
        const bool may_waver = cell.state != models::CellState::Clear;
        cell.alternatives = randomAlternatives(random, may_waver && oneIn(random, 2) ? 3 : 1);
        cell.doubted = cell.state == models::CellState::Restored && oneIn(random, 3);
    }
    cell.erased = oneIn(random, 20);
    cell.struck_over = oneIn(random, 20);
    cell.seen_earlier = oneIn(random, 20);
    return cell;
}

}  // namespace

std::vector<models::Line> randomLines(std::mt19937& random)
{
    std::vector<models::Line> lines(static_cast<std::size_t>(numberUpTo(random, 3)));
    for (models::Line& line : lines) {
        const int cells = oneIn(random, 8) ? 0 : 1 + numberUpTo(random, 9);
        for (int i = 0; i < cells; ++i)
            line.cells.push_back(randomCell(random));
        line.left_end = static_cast<models::LineEnd>(numberUpTo(random, 2));
        line.right_end = static_cast<models::LineEnd>(numberUpTo(random, 2));
    }
    return lines;
}
