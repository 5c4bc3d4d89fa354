// Cells and lines put in, taken out, split and joined.
#include <QtGlobal>
#include <algorithm>
#include <utility>

#include "app/gui/line_edits.h"
#include "app/gui/line_roles.h"
#include "app/gui/reading_editor.h"
#include "app/gui/restored_letters.h"
#include "app/gui/typed_lines.h"

namespace gui {

using models::Line;

EditOutcome ReadingEditor::applyToLine(Edit edit)
{
    switch (edit) {
        case Edit::SplitLine:
            return splitLine();
        case Edit::JoinLine:
            return joinLine();
        case Edit::AddLine:
            return addLine();
        case Edit::RemoveLine:
            return removeLine();
        case Edit::RemoveOtherLines:
            return removeOtherLines();
        case Edit::LineUp:
            return moveLine(-1);
        case Edit::LineDown:
            return moveLine(+1);
        case Edit::LeftEnd:
            return cycleEnd(&Line::left_end);
        case Edit::RightEnd:
            return cycleEnd(&Line::right_end);
        default:
            return partHere();
    }
}

EditOutcome ReadingEditor::insertCell()
{
    if (reading_.lines.empty())
        reading_.lines.emplace_back();
    insertEmptyCell(*line(), place_.cell);
    touch(line()->cells[place_.cell]);
    just_typed_ = false;
    return {true, {}};
}

EditOutcome ReadingEditor::deleteCell()
{
    Line* here = line();
    if (here && here->cells.empty() && reading_.lines.size() > 1) {
        reading_.lines.erase(reading_.lines.begin() + static_cast<std::ptrdiff_t>(place_.line));
        goTo({place_.line, 0});
        return {true, {}};
    }
    if (!cell())
        return {false,
                QT_TRANSLATE_NOOP("gui::ReadingEditor", "There is no cell here to take out.")};
    eraseCell(*here, place_.cell);
    goTo(place_);
    return {true, {}};
}

EditOutcome ReadingEditor::deleteBefore()
{
    if (place_.cell > 0) {
        eraseCell(*line(), place_.cell - 1);
        goTo({place_.line, place_.cell - 1});
        return {true, {}};
    }
    if (place_.line == 0)
        return {false,
                QT_TRANSLATE_NOOP("gui::ReadingEditor", "There is nothing before the first cell.")};
    goTo({place_.line - 1, std::string::npos});
    return joinLine();
}

EditOutcome ReadingEditor::splitLine()
{
    if (!line())
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                         "There is no line yet: type the letters you see.")};
    const std::size_t above = place_.line;
    splitLineAt(reading_, above, place_.cell);
    goTo({above + 1, 0});
    just_split_ = true;
    return {true, {}};
}

EditOutcome ReadingEditor::joinLine()
{
    if (just_split_ && place_.line > 0)
        --place_.line;
    if (place_.line + 1 >= reading_.lines.size())
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor", "There is no line below to join.")};
    const std::size_t seam = line()->cells.size();
    joinWithNext(reading_, place_.line);
    goTo({place_.line, seam});
    return {true, {}};
}

EditOutcome ReadingEditor::addLine()
{
    const std::size_t at = reading_.lines.empty() ? 0 : place_.line + 1;
    reading_.lines.insert(reading_.lines.begin() + static_cast<std::ptrdiff_t>(at), Line{});
    goTo({at, 0});
    return {true, {}};
}

EditOutcome ReadingEditor::removeLine()
{
    if (!line())
        return {false,
                QT_TRANSLATE_NOOP("gui::ReadingEditor", "There is no line here to take out.")};
    reading_.lines.erase(reading_.lines.begin() + static_cast<std::ptrdiff_t>(place_.line));
    goTo({place_.line, 0});
    return {true, {}};
}

EditOutcome ReadingEditor::acceptStamp()
{
    if (!line())
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                         "There is no line yet: type the letters you see.")};
    bool changed = false;
    for (Line& one : reading_.lines)
        for (models::Cell& cell : one.cells)
            if (cell.by != person_) {
                cell.by = person_;
                one.certainty.reset();
                changed = true;
            }
    goTo({reading_.lines.size() - 1, std::string::npos});
    return {changed, {}};
}

EditOutcome ReadingEditor::removeOtherLines()
{
    const auto is_other = [&](const Line& one) {
        return std::none_of(one.cells.begin(), one.cells.end(),
                            [&](const models::Cell& cell) { return cell.by == person_; });
    };
    const auto others = std::count_if(reading_.lines.begin(), reading_.lines.end(), is_other);
    if (others == static_cast<std::ptrdiff_t>(reading_.lines.size()))
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                         "No letter is confirmed yet; confirm the lines that are "
                                         "there, then this takes the others out.")};
    if (others == 0)
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                         "Every line has letters that you confirmed; none was "
                                         "taken out.")};
    const auto above = reading_.lines.begin() + static_cast<std::ptrdiff_t>(place_.line);
    const CellPlace stays{place_.line - static_cast<std::size_t>(
                                            std::count_if(reading_.lines.begin(), above, is_other)),
                          is_other(*above) ? 0 : place_.cell};
    std::erase_if(reading_.lines, is_other);
    goTo(stays);
    return {true, {}};
}

EditOutcome ReadingEditor::moveLine(int by)
{
    const std::size_t here = place_.line;
    if (by < 0 ? here == 0 : here + 1 >= reading_.lines.size())
        return {false,
                by < 0 ? QT_TRANSLATE_NOOP("gui::ReadingEditor", "This is the first line already.")
                       : QT_TRANSLATE_NOOP("gui::ReadingEditor", "This is the last line already.")};
    const std::size_t there = by < 0 ? here - 1 : here + 1;
    std::swap(reading_.lines[here], reading_.lines[there]);
    goTo({there, place_.cell});
    return {true, {}};
}

EditOutcome ReadingEditor::joinCell()
{
    if (!cell() || place_.cell + 1 >= line()->cells.size())
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                         "There is no cell after this one to join.")};
    joinCells(*line(), place_.cell);
    touch(line()->cells[place_.cell]);
    just_typed_ = false;
    return {true, {}};
}

EditOutcome ReadingEditor::splitCell()
{
    if (!cell())
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor", "There is no cell here to split.")};
    splitCellInTwo(*line(), place_.cell);
    for (const std::size_t half : {place_.cell, place_.cell + 1})
        touch(line()->cells[half]);
    just_typed_ = false;
    return {true, {}};
}

EditOutcome ReadingEditor::partHere()
{
    if (!cell())
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                         "There is no cell here at which a part could begin.")};
    if (place_.cell == 0)
        return {false,
                QT_TRANSLATE_NOOP(
                    "gui::ReadingEditor",
                    "A part begins at the line's first cell anyway; go to where the next begins.")};
    partLineAt(*line(), place_.cell);
    return {true, {}};
}

EditOutcome ReadingEditor::setRole(models::LineRole role)
{
    if (!line() || line()->cells.empty())
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                         "There is no line yet: type the letters you see.")};
    setRoleAt(*line(), place_.cell, role);
    return {true, {}};
}

EditOutcome ReadingEditor::write(const std::vector<Line>& typed)
{
    std::vector<Line> lines = withPlacesOf(reading_.lines, typed, person_);
    if (lines == reading_.lines)
        return {};
    reading_.lines = std::move(lines);
    goTo(place_);
    return {true, {}};
}

EditOutcome ReadingEditor::restoreFrom(const std::string& mark)
{
    const auto restored = linesRestoredFrom(mark, reading_.lines, person_);
    if (!restored)
        return {false,
                QT_TRANSLATE_NOOP(
                    "gui::ReadingEditor",
                    "No lost or faint letter of a line lies where this mark would fill it.")};
    reading_.lines = *restored;
    goTo(place_);
    return {true, {}};
}

EditOutcome ReadingEditor::cycleEnd(models::LineEnd Line::*end)
{
    Line* here = line();
    if (!here)
        return {false, QT_TRANSLATE_NOOP("gui::ReadingEditor",
                                         "There is no line yet: type the letters you see.")};
    using models::LineEnd;
    here->*end = here->*end == LineEnd::Unknown    ? LineEnd::Complete
                 : here->*end == LineEnd::Complete ? LineEnd::CutOff
                                                   : LineEnd::Unknown;
    return {true, {}};
}

}  // namespace gui
