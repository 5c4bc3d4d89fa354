#include "app/gui/reading_editor.h"

#include <catch2/catch.hpp>

#include "app/gui/persons_reading.h"
#include "models/typed_notation.h"
#include "tests/gui/edited_reading.h"

using gui::Edit;
using gui::Move;
using gui::ReadingEditor;
using gui_tests::editorOf;
using gui_tests::textOf;
using models::CellState;

TEST_CASE("Typing writes the letter under the person's name and steps right", "[app][gui][editor]")
{
    ReadingEditor editor = editorOf({"1938"});
    editor.goTo({0, 2});

    CHECK(editor.type("4").changed);

    CHECK(textOf(editor) == "1948");
    CHECK(editor.place() == gui::CellPlace{0, 3});
    const auto& cells = editor.reading().lines[0].cells;
    CHECK(cells[2].by == "Maud Pell");
    CHECK(cells[2].alternatives == std::vector<models::Alternative>{{"4", 1.0}});
    CHECK(cells[2].left_px == Approx(20));  // it stays where the letter stands in the picture
    for (const std::size_t untouched : {0u, 1u, 3u})
        CHECK(cells[untouched].by == "tesseract");
    CHECK_FALSE(editor.reading().lines[0].certainty.has_value());
}

TEST_CASE("Typing after the last cell appends, and starts a line where there is none",
          "[app][gui][editor]")
{
    ReadingEditor editor{models::Reading{}, "Maud Pell"};
    for (const char* letter : {"L", "T", "D"})
        CHECK(editor.type(letter).changed);
    REQUIRE(editor.reading().lines.size() == 1);
    CHECK(textOf(editor) == "LTD");
    CHECK(editor.cell() == nullptr);
}

TEST_CASE("A mark right after a letter speaks of that letter, otherwise of the cell in hand",
          "[app][gui][editor]")
{
    ReadingEditor editor = editorOf({"ABC"});
    editor.type("X");
    editor.apply(Edit::MarkUnsure);
    CHECK(editor.reading().lines[0].cells[0].state == CellState::Doubtful);
    CHECK(editor.place() == gui::CellPlace{0, 1});

    editor.move(Move::Right);
    editor.apply(Edit::MarkUnsure);
    CHECK(editor.reading().lines[0].cells[1].state == CellState::Clear);
    CHECK(editor.reading().lines[0].cells[2].state == CellState::Doubtful);
}

TEST_CASE("The five states stay five different things", "[app][gui][editor]")
{
    ReadingEditor editor = editorOf({"ABCDEF"});
    for (const Edit edit : {Edit::MarkClear, Edit::MarkUnsure, Edit::MarkFaint, Edit::MarkLost,
                            Edit::MarkLostUnknown, Edit::MarkRestored})
        CHECK(editor.apply(edit).changed);
    const auto& cells = editor.reading().lines[0].cells;
    CHECK(cells[0].state == CellState::Clear);
    CHECK(cells[1].state == CellState::Doubtful);
    CHECK(cells[1].alternatives.front().text == "B");
    CHECK(cells[2].state == CellState::Traces);
    CHECK(cells[2].alternatives.empty());
    CHECK(cells[3].state == CellState::Lost);
    CHECK(cells[3].most == 1);
    CHECK(cells[4].state == CellState::Lost);
    CHECK_FALSE(cells[4].most.has_value());
    CHECK(cells[5].state == CellState::Restored);
    CHECK_FALSE(cells[5].doubted);
    editor.goTo({0, 5});
    editor.apply(Edit::MarkUnsure);
    CHECK(editor.reading().lines[0].cells[5].state == CellState::Restored);
    CHECK(editor.reading().lines[0].cells[5].doubted);
}

TEST_CASE("What has no letter cannot be made unsure, and says so", "[app][gui][editor]")
{
    ReadingEditor editor = editorOf({"A"});
    editor.apply(Edit::MarkLost);
    editor.goTo({0, 0});
    const models::Reading before = editor.reading();
    const gui::EditOutcome outcome = editor.apply(Edit::MarkUnsure);
    CHECK_FALSE(outcome.changed);
    CHECK_FALSE(outcome.why_not.empty());
    CHECK(editor.reading() == before);
}

TEST_CASE("Alternatives turn both ways and stay best first", "[app][gui][editor]")
{
    models::Reading reading = gui_tests::engineReading({"8"});
    reading.lines[0].cells[0].alternatives = {{"8", 0.6}, {"3", 0.3}, {"B", 0.1}};
    ReadingEditor editor{reading, "Maud Pell"};

    editor.apply(Edit::NextAlternative);
    CHECK(textOf(editor) == "3");
    CHECK(editor.reading().lines[0].cells[0].alternatives.front().certainty == Approx(0.6));
    editor.apply(Edit::NextAlternative);
    CHECK(textOf(editor) == "B");
    editor.apply(Edit::PreviousAlternative);
    editor.apply(Edit::PreviousAlternative);
    CHECK(textOf(editor) == "8");
}

TEST_CASE("A letter typed after 'or' joins the alternatives and makes the cell unsure",
          "[app][gui][editor]")
{
    ReadingEditor editor = editorOf({"1"});
    editor.type("0");
    editor.apply(Edit::OrElse);
    editor.type("6");
    const models::Cell& cell = editor.reading().lines[0].cells[0];
    CHECK(cell.state == CellState::Doubtful);
    REQUIRE(cell.alternatives.size() == 2);
    CHECK(cell.alternatives[0].text == "0");
    CHECK(cell.alternatives[1].text == "6");
    CHECK(cell.alternatives[0].certainty + cell.alternatives[1].certainty <= 1 + 1e-9);
    CHECK(cell.alternatives[0].certainty >= cell.alternatives[1].certainty);
}

TEST_CASE("A lost cell counts up and down but never to nothing", "[app][gui][editor]")
{
    ReadingEditor editor = editorOf({"A"});
    editor.apply(Edit::MarkLost);
    editor.goTo({0, 0});
    editor.apply(Edit::NextAlternative);
    editor.apply(Edit::NextAlternative);
    CHECK(editor.cell()->least == 3);
    CHECK(editor.cell()->most == 3);
    editor.apply(Edit::PreviousAlternative);
    editor.apply(Edit::PreviousAlternative);
    CHECK_FALSE(editor.apply(Edit::PreviousAlternative).changed);
    CHECK(editor.cell()->most == 1);
}

TEST_CASE("Cells and lines are put in, taken out, split and joined", "[app][gui][editor]")
{
    ReadingEditor editor = editorOf({"HARTLTD"});
    editor.goTo({0, 4});
    editor.apply(Edit::SplitLine);
    REQUIRE(editor.reading().lines.size() == 2);
    CHECK(textOf(editor, 0) == "HART");
    CHECK(textOf(editor, 1) == "LTD");
    CHECK(editor.place() == gui::CellPlace{1, 0});

    editor.apply(Edit::DeleteBefore);  // at a line's start it joins
    CHECK(textOf(editor) == "HARTLTD");
    CHECK(editor.place() == gui::CellPlace{0, 4});

    editor.apply(Edit::InsertCell);
    editor.type(" ");
    CHECK(textOf(editor) == "HART LTD");
    editor.apply(Edit::DeleteBefore);
    editor.apply(Edit::DeleteCell);
    CHECK(textOf(editor) == "HARTTD");

    editor.apply(Edit::AddLine);
    editor.type("4");
    CHECK(textOf(editor, 1) == "4");
    CHECK_FALSE(editor.apply(Edit::JoinLine).changed);
}

TEST_CASE("Accepting keeps the cell, signs for it and goes on to the next line",
          "[app][gui][editor]")
{
    ReadingEditor editor = editorOf({"AB", "CD"});
    editor.apply(Edit::Accept);
    CHECK(editor.reading().lines[0].cells[0].by == "Maud Pell");
    CHECK(editor.reading().lines[0].cells[1].by == "tesseract");
    editor.apply(Edit::Accept);
    CHECK(editor.place() == gui::CellPlace{1, 0});
    editor.apply(Edit::AcceptLine);
    CHECK(editor.reading().lines[1].cells[1].by == "Maud Pell");
    CHECK(textOf(editor, 0) + textOf(editor, 1) == "ABCD");
}

TEST_CASE("Line ends go round: not said, complete, cut off", "[app][gui][editor]")
{
    ReadingEditor editor = editorOf({"AB"});
    editor.apply(Edit::RightEnd);
    CHECK(editor.reading().lines[0].right_end == models::LineEnd::Complete);
    editor.apply(Edit::RightEnd);
    CHECK(editor.reading().lines[0].right_end == models::LineEnd::CutOff);
    CHECK(editor.reading().lines[0].left_end == models::LineEnd::Unknown);
    editor.apply(Edit::RightEnd);
    CHECK(editor.reading().lines[0].right_end == models::LineEnd::Unknown);
}

TEST_CASE("Roles stay with their cells when a cell before them comes or goes", "[app][gui][editor]")
{
    models::Reading reading = gui_tests::engineReading({"A 1940"});
    reading.lines[0].spans = {{2, 6, models::LineRole::Date, 1.0}};
    ReadingEditor editor{reading, "Maud Pell"};
    editor.apply(Edit::InsertCell);
    CHECK(editor.reading().lines[0].spans[0].first_cell == 3);
    editor.apply(Edit::DeleteCell);
    editor.apply(Edit::DeleteCell);
    CHECK(editor.reading().lines[0].spans[0].first_cell == 1);
    CHECK(editor.reading().lines[0].spans[0].end_cell == 5);
}

TEST_CASE("Up and down go to the cell that stands nearest in the picture", "[app][gui][editor]")
{
    models::Reading reading = gui_tests::engineReading({"ABCDEF", "1940"});
    for (auto& cell : reading.lines[1].cells) {
        cell.left_px += 20;
        cell.right_px += 20;
    }
    ReadingEditor editor{reading, "Maud Pell"};
    editor.goTo({0, 4});
    editor.move(Move::Down);
    CHECK(editor.place() == gui::CellPlace{1, 2});
    editor.move(Move::Up);
    CHECK(editor.place() == gui::CellPlace{0, 4});
}

TEST_CASE("The person's reading vouches only for the person's cells", "[app][gui][editor]")
{
    models::Reading proposal = gui_tests::engineReading({"AB"});
    CHECK_FALSE(gui::hasConfirmed(proposal, "Maud Pell"));
    proposal.lines[0].cells[1].alternatives = {{"B", 0.7}, {"8", 0.2}};
    ReadingEditor editor{proposal, "Maud Pell"};
    editor.goTo({0, 1});
    editor.apply(Edit::Accept);

    const models::Reading filed = gui::personsReading(editor.reading(), "Maud Pell");

    CHECK(gui::hasConfirmed(filed, "Maud Pell"));
    CHECK(filed.reader == "Maud Pell");
    CHECK(filed.lines[0].cells[0] == proposal.lines[0].cells[0]);
    CHECK(filed.lines[0].cells[1].alternatives == std::vector<models::Alternative>{{"B", 1.0}});
}

TEST_CASE("A letter typed into an unread stretch takes one place and lets the rest stand",
          "[app][gui][editor]")
{
    models::Reading reading = gui_tests::engineReading({"AB"});
    models::Cell& stretch = reading.lines[0].cells[1];
    stretch.state = CellState::Lost;
    stretch.alternatives.clear();
    stretch.least = 2;
    stretch.most = 2;
    stretch.right_px = 30;
    ReadingEditor editor{reading, "Maud Pell"};
    editor.goTo({0, 1});
    editor.type("1");
    REQUIRE(editor.reading().lines[0].cells.size() == 3);
    const auto& cells = editor.reading().lines[0].cells;
    CHECK(cells[1].alternatives.front().text == "1");
    CHECK(cells[1].right_px == Approx(20));
    CHECK(cells[2].state == CellState::Lost);
    CHECK(cells[2].most == 1);
    CHECK(cells[2].left_px == Approx(20));
    CHECK(cells[2].right_px == Approx(30));
    editor.type("9");
    CHECK(textOf(editor) == "A19");
}

TEST_CASE("An unread stretch of unknown number never vanishes by typing", "[app][gui][editor]")
{
    models::Reading reading = gui_tests::engineReading({"AB"});
    models::Cell& stretch = reading.lines[0].cells[1];
    stretch.state = CellState::Traces;
    stretch.alternatives.clear();
    stretch.most.reset();
    stretch.right_px = 50;
    ReadingEditor editor{reading, "Maud Pell"};
    editor.goTo({0, 1});
    for (const char* digit : {"1", "9", "4", "2"})
        editor.type(digit);
    const auto& cells = editor.reading().lines[0].cells;
    REQUIRE(cells.size() == 6);
    CHECK(cells[1].right_px - cells[1].left_px == Approx(10));  // as wide as the other letter
    CHECK(cells[5].state == CellState::Traces);
    CHECK_FALSE(cells[5].most.has_value());
    CHECK(cells[5].by == "tesseract");
    editor.apply(Edit::DeleteCell);
    CHECK(textOf(editor) == "A1942");
}

TEST_CASE("Lost of unknown number at a line's end says that the line was cut off there",
          "[app][gui][editor]")
{
    ReadingEditor editor = editorOf({"ABC"});
    editor.goTo({0, 3});
    editor.apply(Edit::MarkLostUnknown);
    CHECK(editor.reading().lines[0].right_end == models::LineEnd::CutOff);
    CHECK(editor.reading().lines[0].left_end == models::LineEnd::Unknown);
    editor.goTo({0, 0});
    editor.apply(Edit::MarkLostUnknown);
    CHECK(editor.reading().lines[0].left_end == models::LineEnd::CutOff);
    editor.goTo({0, 1});
    CHECK(models::writeTyped(editor.reading().lines[0]) == "[- - -]BC[- - -]");
}
