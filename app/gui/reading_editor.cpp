#include "app/gui/reading_editor.h"

#include <QtGlobal>
#include <algorithm>
#include <utility>

#include "app/gui/line_edits.h"

namespace gui {

using models::Cell;
using models::CellState;
using models::Line;

ReadingEditor::ReadingEditor(models::Reading shown, std::string person)
    : reading_(std::move(shown)), person_(std::move(person))
{
}

const Cell* ReadingEditor::cell() const
{
    if (place_.line >= reading_.lines.size())
        return nullptr;
    const auto& cells = reading_.lines[place_.line].cells;
    return place_.cell < cells.size() ? &cells[place_.cell] : nullptr;
}

Line* ReadingEditor::line()
{
    return place_.line < reading_.lines.size() ? &reading_.lines[place_.line] : nullptr;
}

Cell* ReadingEditor::target()
{
    Line* here = line();
    if (!here)
        return nullptr;
    const bool before = just_typed_ && place_.cell > 0;
    const std::size_t index = before ? place_.cell - 1 : place_.cell;
    return index < here->cells.size() ? &here->cells[index] : nullptr;
}

void ReadingEditor::touch(Cell& cell)
{
    cell.by = person_;
    line()->certainty.reset();
}

void ReadingEditor::put(models::Reading reading, CellPlace place)
{
    reading_ = std::move(reading);
    goTo(place);
}

void ReadingEditor::goTo(CellPlace place)
{
    just_typed_ = or_else_ = just_split_ = false;
    if (reading_.lines.empty()) {
        place_ = {};
        return;
    }
    place_.line = std::min(place.line, reading_.lines.size() - 1);
    place_.cell = std::min(place.cell, reading_.lines[place_.line].cells.size());
}

void ReadingEditor::move(Move move)
{
    if (reading_.lines.empty())
        return;
    const std::size_t last_line = reading_.lines.size() - 1;
    const std::size_t end = reading_.lines[place_.line].cells.size();
    switch (move) {
        case Move::Left:
            if (place_.cell > 0)
                return goTo({place_.line, place_.cell - 1});
            return place_.line > 0 ? goTo({place_.line - 1, std::string::npos}) : goTo(place_);
        case Move::Right:
            if (place_.cell < end)
                return goTo({place_.line, place_.cell + 1});
            return place_.line < last_line ? goTo({place_.line + 1, 0}) : goTo(place_);
        case Move::Up:
            return goTo(placeAcross(reading_, place_, -1));
        case Move::Down:
            return goTo(placeAcross(reading_, place_, +1));
        case Move::LineStart:
            return goTo({place_.line, 0});
        case Move::LineEnd:
            return goTo({place_.line, end});
        case Move::First:
            return goTo({0, 0});
        case Move::Last:
            return goTo({last_line, std::string::npos});
        case Move::NextWorthALook:
            return moveToOpen(+1);
        case Move::LastWorthALook:
            return moveToOpen(-1);
    }
}

// The nearest cell after (or before) the one in hand that is worth a look; stays where there is
// none.
void ReadingEditor::moveToOpen(int by)
{
    CellPlace place = place_;
    for (;;) {
        if (by > 0 && place.cell + 1 < reading_.lines[place.line].cells.size())
            ++place.cell;
        else if (by > 0 && place.line + 1 < reading_.lines.size())
            place = {place.line + 1, 0};
        else if (by < 0 && place.cell > 0)
            --place.cell;
        else if (by < 0 && place.line > 0)
            place = {place.line - 1, reading_.lines[place.line - 1].cells.size()};
        else
            return;
        const auto& cells = reading_.lines[place.line].cells;
        if (place.cell < cells.size() && isWorthALook(cells[place.cell], person_))
            return goTo(place);
    }
}

void ReadingEditor::stepOn()
{
    const Line* here = line();
    const bool at_end = !here || place_.cell + 1 >= here->cells.size();
    if (at_end && place_.line + 1 < reading_.lines.size())
        goTo({place_.line + 1, 0});
    else
        goTo({place_.line, place_.cell + 1});
}

EditOutcome ReadingEditor::type(const std::string& character)
{
    if (or_else_) {
        or_else_ = false;
        Cell* cell = target();
        if (!cell || cell->alternatives.empty())
            return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                             "There is no letter here to add another to.")};
        addAlternative(*cell, character);
        touch(*cell);
        return {true, {}};
    }
    if (reading_.lines.empty())
        reading_.lines.emplace_back();
    Line& here = *line();
    if (place_.cell == here.cells.size())
        here.cells.emplace_back();
    detachLetter(here, place_.cell, usualLetterWidth(reading_, here));
    Cell& cell = here.cells[place_.cell];
    Cell written = models::clearCell(character);
    written.left_px = cell.left_px;
    written.right_px = cell.right_px;
    cell = std::move(written);
    touch(cell);
    goTo({place_.line, place_.cell + 1});
    just_typed_ = true;
    return {true, {}};
}

EditOutcome ReadingEditor::apply(Edit edit)
{
    if (edit != Edit::OrElse)
        or_else_ = false;
    switch (edit) {
        case Edit::MarkClear:
            return markState(CellState::Clear);
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
        case Edit::OrElse:
            or_else_ = true;
            return {};
        case Edit::NextAlternative:
            return turn(+1);
        case Edit::PreviousAlternative:
            return turn(-1);
        case Edit::InsertCell:
            return insertCell();
        case Edit::DeleteCell:
            return deleteCell();
        case Edit::DeleteBefore:
            return deleteBefore();
        case Edit::Accept:
            return accept(false);
        case Edit::AcceptLine:
            return accept(true);
        case Edit::AcceptStamp:
            return acceptStamp();
        case Edit::SplitLine:
            return splitLine();
        case Edit::JoinLine:
            return joinLine();
        case Edit::AddLine:
            return addLine();
        case Edit::LeftEnd:
            return cycleEnd(&Line::left_end);
        case Edit::RightEnd:
            return cycleEnd(&Line::right_end);
        case Edit::RemoveLine:
            return removeLine();
        case Edit::RemoveOtherLines:
            return removeOtherLines();
        case Edit::LineUp:
            return moveLine(-1);
        case Edit::LineDown:
            return moveLine(+1);
        case Edit::JoinCell:
            return joinCell();
        case Edit::SplitCell:
            return splitCell();
        case Edit::PartHere:
            return partHere();
        default:
            return setRole(static_cast<models::LineRole>(static_cast<int>(edit) -
                                                         static_cast<int>(Edit::RoleUnknown)));
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

EditOutcome ReadingEditor::turn(int by)
{
    Cell* cell = target();
    if (!cell)
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor", "There is no cell here to turn.")};
    const bool turned =
        cell->alternatives.empty() ? changeNumber(*cell, by) : turnAlternatives(*cell, by);
    if (!turned)
        return {false, QT_TRANSLATE_NOOP(
                           "gui::ReadingEditor",
                           "There is nothing else this cell could be; type the letter you see.")};
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
