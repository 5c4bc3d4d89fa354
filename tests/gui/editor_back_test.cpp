// What a person does to cells and lines and takes back again.
#include <catch2/catch.hpp>

#include "app/gui/cell_words.h"
#include "app/gui/reading_editor.h"
#include "tests/gui/edited_reading.h"

using gui::Edit;
using gui::Move;
using gui::ReadingEditor;
using gui_tests::editorOf;
using gui_tests::textOf;

TEST_CASE("Joining right after splitting takes the split back, not the line below",
          "[app][gui][editor]")
{
    ReadingEditor editor = editorOf({"19394071", "SIZE 3"});
    editor.goTo({0, 4});
    editor.apply(Edit::SplitLine);
    REQUIRE(editor.reading().lines.size() == 3);
    editor.apply(Edit::JoinLine);
    REQUIRE(editor.reading().lines.size() == 2);
    CHECK(textOf(editor) == "19394071");
    CHECK(editor.place() == gui::CellPlace{0, 4});
    editor.apply(Edit::SplitLine);
    editor.move(Move::Right);  // on the way elsewhere it is the line below again
    editor.apply(Edit::JoinLine);
    CHECK(textOf(editor, 1) == "4071SIZE 3");
}

TEST_CASE("Who goes through the alternatives and back has confirmed nothing", "[app][gui][editor]")
{
    models::Reading reading = gui_tests::engineReading({"8"});
    reading.lines[0].cells[0].alternatives = {{"8", 0.6}, {"3", 0.3}, {"B", 0.1}};
    ReadingEditor editor{reading, "Maud Pell"};
    CHECK(editor.turnedFrom() == nullptr);
    editor.apply(Edit::NextAlternative);
    CHECK(editor.cell()->by == "Maud Pell");
    REQUIRE(editor.turnedFrom());
    CHECK(*editor.turnedFrom() == reading.lines[0].cells[0]);
    const QString told = gui::turningSentence(*editor.cell(), *editor.turnedFrom(), "Maud Pell");
    for (const char* one : {"8 60 %", "3 30 %", "B 10 %"})
        CHECK(told.contains(one));

    SECTION("back by the other key")
    {
        editor.apply(Edit::PreviousAlternative);
    }
    SECTION("all the way round")
    {
        editor.apply(Edit::NextAlternative);
        editor.apply(Edit::NextAlternative);
    }
    CHECK(editor.reading().lines == reading.lines);
    editor.move(Move::Right);
    CHECK(editor.turnedFrom() == nullptr);
}

TEST_CASE("How sure the letter in hand is can be said by key", "[app][gui][editor]")
{
    models::Reading reading = gui_tests::engineReading({"8"});
    reading.lines[0].cells[0].alternatives = {{"8", 0.5}, {"3", 0.4}, {"B", 0.1}};
    ReadingEditor editor{reading, "Maud Pell"};
    editor.apply(Edit::Surer);
    editor.apply(Edit::Surer);
    const models::Cell& cell = *editor.cell();
    CHECK(cell.state == models::CellState::Doubtful);
    CHECK(cell.by == "Maud Pell");
    CHECK(cell.alternatives[0].certainty == Approx(0.7));
    CHECK(cell.alternatives[1].certainty == Approx(0.24));
    CHECK(gui::cellSentence(cell, "Maud Pell").contains("70 %"));
    for (int i = 0; i < 10; ++i)
        editor.apply(Edit::LessSure);  // never below the letter after it
    CHECK(cell.alternatives[0].certainty >= cell.alternatives[1].certainty);
    CHECK_FALSE(editor.apply(Edit::LessSure).why_not.empty());
    for (int i = 0; i < 10; ++i)
        editor.apply(Edit::Surer);
    CHECK(cell.alternatives[0].certainty == Approx(0.95));
}
