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
    turning_.reset();
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
        turning_.reset();
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

}  // namespace gui
