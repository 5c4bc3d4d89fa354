// What a person does to cells and lines and takes back again.
#include <catch2/catch.hpp>

#include "app/gui/reading_editor.h"
#include "tests/gui/readings.h"

using gui::Edit;
using gui::Move;
using gui::ReadingEditor;

namespace {

ReadingEditor editorOn(const std::vector<std::string>& lines)
{
    return {gui_tests::engineReading(lines), "Maud Pell"};
}

std::string lineText(const ReadingEditor& editor, std::size_t line = 0)
{
    return models::plainText(editor.reading().lines.at(line));
}

}  // namespace

TEST_CASE("Joining right after splitting takes the split back, not the line below",
          "[app][gui][editor]")
{
    ReadingEditor editor = editorOn({"19394071", "SIZE 3"});
    editor.goTo({0, 4});
    editor.apply(Edit::SplitLine);
    REQUIRE(editor.reading().lines.size() == 3);
    editor.apply(Edit::JoinLine);
    REQUIRE(editor.reading().lines.size() == 2);
    CHECK(lineText(editor) == "19394071");
    CHECK(editor.place() == gui::CellPlace{0, 4});
    editor.apply(Edit::SplitLine);
    editor.move(Move::Right);  // on the way elsewhere it is the line below again
    editor.apply(Edit::JoinLine);
    CHECK(lineText(editor, 1) == "4071SIZE 3");
}
