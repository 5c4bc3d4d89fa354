#pragma once

#include <cstddef>
#include <string>

#include "app/gui/reading_editor.h"
#include "models/reading.h"

// Changes to cells and lines that keep them whole: alternatives best first and summing to at most
// one, roles staying with their cells, boxes covering their cells.
namespace gui {

// Puts the next (by = +1) or last (by = -1) alternative first; certainties stay in falling order.
//   returns  false, and nothing changed, when there is no other
bool turnAlternatives(models::Cell& cell, int by);

// Adds one more character to a cell that has alternatives and makes it doubtful. A character
// that is among them already stays where it is.
void addAlternative(models::Cell& cell, const std::string& character);

// Makes the letter in hand a tenth surer (by = +1) or less sure, the others together what is left
// at most; the cell is doubtful then, if it was clear.
//   returns  false, and nothing changed, where it would be certain, or not the likeliest any more
bool changeCertainty(models::Cell& cell, int by);

// One character more or fewer in a lost or faint cell; one at least. From an unknown number, the
// first step is to a known one.
//   returns  false, and nothing changed, where it would fall below one
bool changeNumber(models::Cell& cell, int by);

// Makes room for one letter at the head of a lost or faint stretch of several characters: a cell
// of its own before `at`, as wide as one of them, and the stretch one character shorter. A stretch
// of unknown number stays, since nobody knows what is left of it. Does nothing to other cells.
void detachLetter(models::Line& line, std::size_t at, double usual_width_px);

// How wide a letter usually is: the middle width of the reading's placed letters, or what suits
// the line's height; 0 when neither is known.
double usualLetterWidth(const models::Reading& reading, const models::Line& line);

// A faint cell without letters and without a place in the picture, before `at`.
void insertEmptyCell(models::Line& line, std::size_t at);
void eraseCell(models::Line& line, std::size_t at);

// The cell and the one after it become one, with the first one's letters and both their places.
void joinCells(models::Line& line, std::size_t at);
// The cell becomes two, each with half its place: the first keeps the letters, the second is faint.
void splitCellInTwo(models::Line& line, std::size_t at);

// Cells from `at` on go to a new line below.
void splitLineAt(models::Reading& reading, std::size_t line, std::size_t at);
// The line below is put behind this one. There must be one.
void joinWithNext(models::Reading& reading, std::size_t line);

// The place in the line above (by = -1) or below that stands nearest in the picture; the same
// place when there is no such line.
CellPlace placeAcross(const models::Reading& reading, CellPlace from, int by);

// Whether the cell waits for the person: not theirs yet, and unread, unsure or not very certain.
bool isWorthALook(const models::Cell& cell, const std::string& person);

}  // namespace gui
