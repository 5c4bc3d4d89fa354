#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

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
    Surer,                // of the letter in hand: a tenth more
    LessSure,
    InsertCell,
    DeleteCell,
    DeleteBefore,
    JoinCell,     // with the cell after it: one letter that was taken for two
    SplitCell,    // two letters that were taken for one
    Accept,       // as it is, and on to the next
    AcceptLine,   // the whole line as it is, and on to the next line
    AcceptStamp,  // every line as it is
    SplitLine,
    JoinLine,  // with the line below
    AddLine,   // below
    RemoveLine,
    RemoveOtherLines,  // those in which the person has confirmed nothing
    LineUp,            // the line changes places with the one above it
    LineDown,
    LeftEnd,  // not said -> complete -> cut off -> not said
    RightEnd,
    PartHere,  // a stretch with a role of its own begins at this cell, or no longer
    // What the stretch is for, in the order of models::LineRole.
    RoleUnknown,
    RoleMaker,
    RoleDate,
    RoleSize,
    RoleContract,
    RoleInspection,
    RolePattern,
    RoleProperty,
    RoleOwner,
    RoleOther
};

// WorthALook: a cell that nobody has confirmed and of which the reader is not sure.
enum class Move {
    Left,
    Right,
    Up,
    Down,
    LineStart,
    LineEnd,
    First,
    Last,
    NextWorthALook,
    LastWorthALook
};

// A cell of a reading; cell == number of cells is the place after the line's last one.
struct CellPlace {
    std::size_t line = 0, cell = 0;

    bool operator==(const CellPlace&) const = default;
    auto operator<=>(const CellPlace&) const = default;
};

struct EditOutcome {
    bool changed = false;
    std::string why_not;     // a sentence for the person where it could not be done; often empty
    bool as_before = false;  // going through alternatives has come round: nothing is left of it
};

// The rules by which a person turns a proposal into their own reading. Cells they touch carry
// their name in `by` and their line loses the engine's certainty; all others stay as they were.
class ReadingEditor {
public:
    ReadingEditor() = default;
    ReadingEditor(models::Reading shown, std::string person);

    const models::Reading& reading() const { return reading_; }
    CellPlace place() const { return place_; }
    // While one goes through the alternatives of a cell: the cell as it was before; else nullptr.
    const models::Cell* turnedFrom() const { return turning_ ? &turning_->cell : nullptr; }
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
    // Puts lines written as text in the place of those there are: what was not changed stays as it
    // was seen, with its place in the picture (see typed_lines.h).
    EditOutcome write(const std::vector<models::Line>& typed);
    // Writes the letters of a mark into the lost and faint cells that they would fill, as restored.
    EditOutcome restoreFrom(const std::string& mark);

private:
    models::Line* line();
    models::Cell* target();
    void touch(models::Cell& cell);
    void stepOn();
    EditOutcome markState(models::CellState state);
    EditOutcome markGone(models::CellState state, bool unknown_number);
    EditOutcome mark(Edit edit);
    EditOutcome applyToCell(Edit edit);
    EditOutcome applyToLine(Edit edit);
    EditOutcome turn(int by);
    EditOutcome weigh(int by);
    EditOutcome insertCell();
    EditOutcome deleteCell();
    EditOutcome deleteBefore();
    EditOutcome accept(bool whole_line);
    EditOutcome acceptStamp();
    EditOutcome splitLine();
    EditOutcome joinLine();
    EditOutcome addLine();
    EditOutcome removeLine();
    EditOutcome removeOtherLines();
    EditOutcome moveLine(int by);
    EditOutcome joinCell();
    EditOutcome splitCell();
    EditOutcome partHere();
    EditOutcome setRole(models::LineRole role);
    void moveToOpen(int by);
    EditOutcome cycleEnd(models::LineEnd models::Line::*end);

    // Before the first of the alternatives gone through.
    struct Turning {
        models::Cell cell;
        std::optional<double> line_certainty;
    };

    models::Reading reading_;
    std::string person_;
    CellPlace place_;
    bool just_typed_ = false;  // marks then speak of the cell just written, as in "A?"
    bool or_else_ = false;
    std::optional<Turning> turning_;
    bool just_split_ = false;  // joining then takes the split back
};

}  // namespace gui
