#pragma once

#include <string>
#include <vector>

#include "app/gui/reading_editor.h"
#include "tests/gui/readings.h"

namespace gui_tests {

// What an engine read of these lines, in a person's hands.
inline gui::ReadingEditor editorOf(const std::vector<std::string>& lines)
{
    return {engineReading(lines), "Maud Pell"};
}

inline std::string textOf(const gui::ReadingEditor& editor, std::size_t line = 0)
{
    return models::plainText(editor.reading().lines.at(line));
}

}  // namespace gui_tests
