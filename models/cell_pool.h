#pragma once

#include "models/reading.h"

// How two readers' views of one character become one; for mergeReadings alone.
namespace models {

// 0 when two cells say the same, 1 when they have nothing in common, by text and, where both are
// known, by extents.
double cellDistance(const Cell& a, const Cell& b);

// One cell from two that stand for the same character; `trusted` decides what the alternatives
// leave open.
Cell poolCells(const Cell& trusted, const Cell& other);

// A cell that the other reader did not see, with its certainties lowered by `factor`.
Cell lessCertain(Cell cell, double factor);

}  // namespace models
