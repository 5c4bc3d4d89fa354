// Cells and lines put in, taken out, split and joined.
#include "app/gui/line_edits.h"
#include "app/gui/reading_editor.h"

namespace gui {

using models::Line;

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
        return {false, "There is no cell here to take out."};
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
        return {false, "There is nothing before the first cell."};
    goTo({place_.line - 1, std::string::npos});
    return joinLine();
}

EditOutcome ReadingEditor::splitLine()
{
    if (!line())
        return {false, "There is no line yet: type the letters you see."};
    const std::size_t above = place_.line;
    splitLineAt(reading_, above, place_.cell);
    goTo({above + 1, 0});
    return {true, {}};
}

EditOutcome ReadingEditor::joinLine()
{
    if (place_.line + 1 >= reading_.lines.size())
        return {false, "There is no line below to join."};
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

EditOutcome ReadingEditor::cycleEnd(models::LineEnd Line::*end)
{
    Line* here = line();
    if (!here)
        return {false, "There is no line yet: type the letters you see."};
    using models::LineEnd;
    here->*end = here->*end == LineEnd::Unknown    ? LineEnd::Complete
                 : here->*end == LineEnd::Complete ? LineEnd::CutOff
                                                   : LineEnd::Unknown;
    return {true, {}};
}

}  // namespace gui
