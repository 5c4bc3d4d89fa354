#pragma once

#include <QString>

#include "models/reading.h"

// How cells are told to a person: a plain word for the state, a sign for the face of the cell, a
// sentence for the line below and for those who listen instead of look.
namespace gui {

// "clear", "unsure", "faint", "lost", "restored".
QString stateWord(const models::Cell& cell);

// What stands in the cell: A, A with a dot below, +, [..], [- - -], [A]; a space shows as a low
// bracket, a restored full stop between quotes, since [.] is a lost letter.
QString cellFace(const models::Cell& cell);

// "R, clear, seen by the engine (83 %); or B 10 %, P 5 %".
QString cellSentence(const models::Cell& cell, const std::string& person);

// The same while its alternatives are gone through: all of them as they were seen, the one in hand
// between angles.
QString turningSentence(const models::Cell& cell, const models::Cell& before,
                        const std::string& person);

// What the engines saw where the person's cell stands, if it is another letter or state; nullptr
// where they agree, the cell is not the person's, or nothing was seen there.
//   line  that the cell is of
const models::Cell* differingCell(const models::Cell& cell, const models::Line& line,
                                  const models::Reading& proposal, const std::string& person);

// A line's ends in words: "complete", "cut off", "not said".
QString endWord(models::LineEnd end);

// A maker's or year's share: "83 %", "less than 1 %", "more than 99 %".
QString shareWord(double probability);

}  // namespace gui
