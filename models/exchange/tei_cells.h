#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "models/exchange/tei.h"
#include "models/exchange/tei_elements.h"

namespace models {

// Cells from <= i < to as TEI inside the elements that `context` stands for, which have said all
// but state, letters and extents. Throws std::invalid_argument naming the cell.
std::string teiCells(const std::vector<Cell>& cells, std::size_t from, std::size_t to,
                     const TeiContext& context);

// Whether a mark that stands for cells (a gap, a blank) still says what the cells say.
bool fitsTeiMark(const TeiMark& mark, const std::vector<Cell>& cells);

// A certainty as `cert` has it. Throws std::invalid_argument outside 0 to 1.
std::string teiCertainty(double certainty);

// Whether a line's <lb> has something to say beyond its number.
bool saysLine(const Line& line);

// The cell that a <gap> with these attributes says (`unit` aside).
Cell gapCell(const TeiAttributes& attributes);

// Whether plain text can hold the letter: one user-perceived character in normal form.
bool isPlainLetter(const std::string& letter);

}  // namespace models
