// What a key does to the cell in hand.
#include <QtGlobal>
#include <algorithm>

#include "app/gui/line_edits.h"
#include "app/gui/reading_editor.h"

namespace gui {

using models::Cell;
using models::CellState;
using models::Line;

namespace {

bool turns(Edit edit)
{
    return edit == Edit::NextAlternative || edit == Edit::PreviousAlternative;
}

// The same letter in hand, or as many lost.
bool saysTheSame(const Cell& a, const Cell& b)
{
    if (a.alternatives.empty() || b.alternatives.empty())
        return a.alternatives.empty() && b.alternatives.empty() && a.least == b.least &&
               a.most == b.most;
    return a.alternatives.front().text == b.alternatives.front().text;
}

}  // namespace

EditOutcome ReadingEditor::apply(Edit edit)
{
    if (edit != Edit::OrElse)
        or_else_ = false;
    if (!turns(edit))
        turning_.reset();
    if (edit <= Edit::MarkRestored)
        return mark(edit);
    if (edit >= Edit::RoleUnknown)
        return setRole(static_cast<models::LineRole>(static_cast<int>(edit) -
                                                     static_cast<int>(Edit::RoleUnknown)));
    return edit >= Edit::SplitLine ? applyToLine(edit) : applyToCell(edit);
}

EditOutcome ReadingEditor::mark(Edit edit)
{
    switch (edit) {
        case Edit::MarkUnsure:
            return markState(CellState::Doubtful);
        case Edit::MarkRestored:
            return markState(CellState::Restored);
        case Edit::MarkFaint:
            return markGone(CellState::Traces, false);
        case Edit::MarkLost:
            return markGone(CellState::Lost, false);
        case Edit::MarkLostUnknown:
            return markGone(CellState::Lost, true);
        default:
            return markState(CellState::Clear);
    }
}

EditOutcome ReadingEditor::applyToCell(Edit edit)
{
    switch (edit) {
        case Edit::NextAlternative:
            return turn(+1);
        case Edit::PreviousAlternative:
            return turn(-1);
        case Edit::Surer:
            return weigh(+1);
        case Edit::LessSure:
            return weigh(-1);
        case Edit::InsertCell:
            return insertCell();
        case Edit::DeleteCell:
            return deleteCell();
        case Edit::DeleteBefore:
            return deleteBefore();
        case Edit::JoinCell:
            return joinCell();
        case Edit::SplitCell:
            return splitCell();
        case Edit::Accept:
            return accept(false);
        case Edit::AcceptLine:
            return accept(true);
        case Edit::AcceptStamp:
            return acceptStamp();
        default:
            or_else_ = true;
            return {};
    }
}

EditOutcome ReadingEditor::markState(CellState state)
{
    Cell* cell = target();
    if (!cell || cell->alternatives.empty())
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                         "Type the letter first, then say how sure it is.")};
    const bool doubting = state == CellState::Doubtful && cell->state == CellState::Restored;
    if (doubting) {
        cell->doubted = !cell->doubted;
    } else {
        cell->state = state;
        cell->doubted = false;
    }
    touch(*cell);
    if (!just_typed_)
        stepOn();
    return {true, {}};
}

EditOutcome ReadingEditor::markGone(CellState state, bool unknown_number)
{
    if (reading_.lines.empty())
        reading_.lines.emplace_back();
    Line& here = *line();
    if (place_.cell == here.cells.size())
        here.cells.emplace_back();
    Cell& cell = here.cells[place_.cell];
    cell.state = state;
    cell.alternatives.clear();
    cell.doubted = false;
    cell.least = unknown_number ? 0 : 1;
    cell.most = unknown_number ? std::nullopt : std::optional<int>(1);
    touch(cell);
    // At a line's end, as in the typed notation, it says that the line was cut off there.
    if (unknown_number && place_.cell + 1 == here.cells.size())
        here.right_end = models::LineEnd::CutOff;
    else if (unknown_number && place_.cell == 0)
        here.left_end = models::LineEnd::CutOff;
    stepOn();
    return {true, {}};
}

// Round to where it began, the cell is as it was: who only looked has confirmed nothing.
EditOutcome ReadingEditor::turn(int by)
{
    Cell* cell = target();
    if (!cell)
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor", "There is no cell here to turn.")};
    const Turning before = turning_.value_or(Turning{*cell, line()->certainty});
    const bool turned =
        cell->alternatives.empty() ? changeNumber(*cell, by) : turnAlternatives(*cell, by);
    if (!turned)
        return {false, QT_TRANSLATE_NOOP(
                           "gui::ReadingEditor",
                           "There is nothing else this cell could be; type the letter you see.")};
    turning_ = before;
    if (saysTheSame(*cell, before.cell)) {
        *cell = before.cell;
        line()->certainty = before.line_certainty;
        return {true, {}, true};
    }
    touch(*cell);
    return {true, {}};
}

EditOutcome ReadingEditor::weigh(int by)
{
    Cell* cell = target();
    if (!cell || cell->alternatives.empty())
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                         "Type the letter first, then say how sure it is.")};
    if (!changeCertainty(*cell, by))
        return {false, by > 0
                           ? QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                               "Surer than this is a letter that is clear.")
                           : QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                               "Less sure than this, another letter is likelier; "
                                               "PgDn turns to it.")};
    touch(*cell);
    return {true, {}};
}

EditOutcome ReadingEditor::accept(bool whole_line)
{
    Line* here = line();
    if (!here)
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                         "There is no line yet: type the letters you see.")};
    const std::size_t end =
        whole_line ? here->cells.size() : std::min(place_.cell + 1, here->cells.size());
    bool changed = false;
    for (std::size_t i = whole_line ? 0 : place_.cell; i < end; ++i) {
        changed = changed || here->cells[i].by != person_;
        touch(here->cells[i]);
    }
    if (whole_line && end > 0)
        place_.cell = end - 1;
    stepOn();
    return {changed, {}};
}

}  // namespace gui
