#pragma once

#include <cstddef>
#include <vector>

#include "models/reading.h"
#include "models/text_alignment.h"

// Years that stand on a line as codes of the register.
namespace models {

// A stretch between spaces: cells first_cell <= i < end_cell of the line.
struct CodeWord {
    std::size_t first_cell = 0, end_cell = 0;
    std::vector<AlignedCell> cells;
};

// The words of a line; `cells` are all of its cells, divided by `other` as odds are.
std::vector<CodeWord> codeWords(const Line& line, const std::vector<AlignedCell>& cells);

// P(word | a date, written as this code) / P(word | other text): a year's code stands by itself. 0
// where that is not worth a thought.
double codeOdds(const CodeWord& word, const MatchText& code);

}  // namespace models
