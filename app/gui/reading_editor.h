#pragma once

#include <cstddef>
#include <string>

#include "models/reading.h"

namespace gui {

// What a person can do to the cell they are at, or to its line. Each has a key (see letter_keys.h).
enum class Edit {
    MarkClear,
    MarkUnsure,  // on a restored cell: the restoration is in doubt
    MarkFaint,
    MarkLost,
    MarkLostUnknown,  // lost, nobody knows how many
    MarkRestored,
    OrElse,               // the next typed character is one more letter that this cell may be
    NextAlternative,      // of a lost or faint cell: one character more
    PreviousAlternative,  // of a lost or faint cell: one character fewer
    InsertCell,
    DeleteCell,
    DeleteBefore,
    Accept,      // as it is, and on to the next
    AcceptLine,  // the rest of the line as it is, and on to the next line
    SplitLine,
    JoinLine,  // with the line below
    AddLine,   // below
    LeftEnd,   // not said -> complete -> cut off -> not said
    RightEnd
};

enum class Move { Left, Right, Up, Down, LineStart, LineEnd, First, Last };

// A cell of a reading; cell == number of cells is the place after the line's last one.
struct CellPlace {
    std::size_t line = 0, cell = 0;

    bool operator==(const CellPlace&) const = default;
    auto operator<=>(const CellPlace&) const = default;
};

struct EditOutcome {
    bool changed = false;
    std::string why_not;  // a sentence for the person where it could not be done; often empty
};

// The rules by which a person turns a proposal into their own reading. Cells they touch carry
// their name in `by` and their line loses the engine's certainty; all others stay as they were.
class ReadingEditor {
public:
    ReadingEditor() = default;
    ReadingEditor(models::Reading shown, std::string person);

    const models::Reading& reading() const { return reading_; }
    CellPlace place() const { return place_; }
    // nullptr after a line's last cell, and when there are no lines.
    const models::Cell* cell() const;
    // Puts a whole reading in place, as undo does; the place is brought inside it.
    void put(models::Reading reading, CellPlace place);

    void goTo(CellPlace place);
    void move(Move move);

    // Writes one user-perceived character (UTF-8) into the cell and steps right; after the last
    // cell it appends one; in a lost or faint stretch of several it takes one's place. Directly
    // after OrElse it adds an alternative instead.
    EditOutcome type(const std::string& character);
    EditOutcome apply(Edit edit);

private:
    models::Line* line();
    models::Cell* target();
    void touch(models::Cell& cell);
    void stepOn();
    EditOutcome markState(models::CellState state);
    EditOutcome markGone(models::CellState state, bool unknown_number);
    EditOutcome turn(int by);
    EditOutcome insertCell();
    EditOutcome deleteCell();
    EditOutcome deleteBefore();
    EditOutcome accept(bool whole_line);
    EditOutcome splitLine();
    EditOutcome joinLine();
    EditOutcome addLine();
    EditOutcome cycleEnd(models::LineEnd models::Line::*end);

    models::Reading reading_;
    std::string person_;
    CellPlace place_;
    bool just_typed_ = false;  // marks then speak of the cell just written, as in "A?"
    bool or_else_ = false;
};

}  // namespace gui
