// What a person does to lines beyond single letters: roles, text, restored letters.
#include <catch2/catch.hpp>

#include "app/gui/cell_words.h"
#include "app/gui/line_roles.h"
#include "app/gui/reading_editor.h"
#include "models/typed_notation.h"
#include "tests/gui/readings.h"

using gui::Edit;
using gui::Move;
using gui::ReadingEditor;
using models::CellState;
using models::LineRole;

namespace {

models::Reading typedReading(const std::string& typed)
{
    models::Reading reading;
    reading.reader = "engine";
    reading.lines = models::parseTyped(typed).lines;
    double y = 0;
    for (models::Line& line : reading.lines) {
        line.box_px = {0, y, 20.0 * static_cast<double>(line.cells.size()), 30};
        y += 30;
        double x = 0;
        for (models::Cell& cell : line.cells) {
            cell.left_px = x;
            cell.right_px = x += 20;
            cell.by = "engine";
        }
    }
    return reading;
}

std::string typedOf(const ReadingEditor& editor)
{
    return models::writeTyped(editor.reading().lines);
}

}  // namespace

TEST_CASE("Confirming a line makes every cell of it the person's, wherever one is in it",
          "[app][gui][editor]")
{
    ReadingEditor editor(typedReading("HART / 1938"), "Maud");
    editor.goTo({0, 2});
    CHECK(editor.apply(Edit::AcceptLine).changed);
    for (const models::Cell& cell : editor.reading().lines[0].cells)
        CHECK(cell.by == "Maud");
    CHECK(editor.reading().lines[1].cells[0].by == "engine");
    CHECK(editor.place() == gui::CellPlace{1, 0});
}

TEST_CASE("Lines change places and are taken out", "[app][gui][editor]")
{
    ReadingEditor editor(typedReading("HART / 1938 / L"), "Maud");
    CHECK_FALSE(editor.apply(Edit::LineUp).why_not.empty());
    editor.apply(Edit::LineDown);
    CHECK(typedOf(editor) == "1938 / HART / L");
    CHECK(editor.place().line == 1);
    editor.apply(Edit::RemoveLine);
    CHECK(typedOf(editor) == "1938 / L");
    editor.apply(Edit::LineUp);
    CHECK(typedOf(editor) == "L / 1938");
}

TEST_CASE("One letter taken for two is joined, two taken for one are parted; the place stays",
          "[app][gui][editor]")
{
    ReadingEditor editor(typedReading("RNA"), "Maud");
    editor.apply(Edit::JoinCell);
    REQUIRE(editor.reading().lines[0].cells.size() == 2);
    CHECK(editor.cell()->left_px == 0);
    CHECK(editor.cell()->right_px == 40);
    editor.type("M");
    CHECK(typedOf(editor) == "MA");
    editor.goTo({0, 0});
    editor.apply(Edit::SplitCell);
    CHECK(typedOf(editor) == "M+A");
    CHECK(editor.reading().lines[0].cells[0].right_px == 20);
    CHECK(editor.reading().lines[0].cells[1].left_px == 20);
}

TEST_CASE("A key leads to the next cell worth a look and passes over sure and confirmed ones",
          "[app][gui][editor]")
{
    ReadingEditor editor(typedReading("AB?C / +D"), "Maud");
    editor.move(Move::NextWorthALook);
    CHECK(editor.place() == gui::CellPlace{0, 1});
    editor.move(Move::NextWorthALook);
    CHECK(editor.place() == gui::CellPlace{1, 0});
    editor.move(Move::NextWorthALook);
    CHECK(editor.place() == gui::CellPlace{1, 0});  // there is no other
    editor.goTo({0, 1});
    editor.apply(Edit::Accept);
    editor.goTo({1, 0});
    editor.move(Move::LastWorthALook);
    CHECK(editor.place() == gui::CellPlace{1, 0});
}

TEST_CASE("A line says what it is for, whole or in parts", "[app][gui][roles]")
{
    ReadingEditor editor(typedReading("HART 1938"), "Maud");
    editor.apply(Edit::RoleMaker);
    REQUIRE(editor.reading().lines[0].spans.size() == 1);
    CHECK(editor.reading().lines[0].spans[0].end_cell == 9);
    editor.goTo({0, 5});
    editor.apply(Edit::PartHere);
    editor.apply(Edit::RoleDate);
    const auto& spans = editor.reading().lines[0].spans;
    REQUIRE(spans.size() == 2);
    CHECK(spans[0] == models::RoleSpan{0, 5, LineRole::Maker, 1});
    CHECK(spans[1] == models::RoleSpan{5, 9, LineRole::Date, 1});
    editor.apply(Edit::PartHere);
    CHECK(editor.reading().lines[0].spans.size() == 1);
    editor.apply(Edit::RoleUnknown);
    CHECK(editor.reading().lines[0].spans.empty());
}

TEST_CASE("Where the person has not said, the likeliest guess is shown as a guess",
          "[app][gui][roles]")
{
    models::Reading reading = typedReading("HART / 1938");
    reading.lines[0].spans = {{0, 4, LineRole::Owner, 1}};
    const std::vector<std::vector<models::RoleSpan>> guessed{
        {{0, 4, LineRole::Maker, 0.9}}, {{0, 4, LineRole::Date, 0.7}, {0, 4, LineRole::Size, 0.2}}};
    const auto shown = gui::shownRoles(reading.lines, guessed);
    REQUIRE(shown.size() == 2);
    CHECK(shown[0] == std::vector<gui::ShownRole>{{0, 4, LineRole::Owner, false}});
    CHECK(shown[1] == std::vector<gui::ShownRole>{{0, 4, LineRole::Date, true}});
}

TEST_CASE("Written as text, what is left as it was keeps its reader and its place",
          "[app][gui][typed]")
{
    const models::Reading before = typedReading("HABT / 1938");
    ReadingEditor editor(before, "Maud");
    CHECK(editor.write(models::parseTyped("HART / 19[.]8").lines).changed);
    const auto& lines = editor.reading().lines;
    CHECK(lines[0].cells[0] == before.lines[0].cells[0]);
    CHECK(lines[0].cells[2].by == "Maud");
    CHECK(lines[0].cells[2].left_px == 40);  // in the place of the B
    CHECK(lines[0].cells[2].right_px == 60);
    CHECK(lines[0].cells[3].by == "engine");
    CHECK(lines[1].cells[2].state == CellState::Lost);
    CHECK(lines[1].cells[3] == before.lines[1].cells[3]);
    CHECK(lines[1].box_px == before.lines[1].box_px);
    CHECK_FALSE(editor.write(models::parseTyped("HART / 19[.]8").lines).changed);
}

TEST_CASE("A line put in or taken out as text leaves the others alone", "[app][gui][typed]")
{
    const models::Reading before = typedReading("HART / 1938");
    ReadingEditor editor(before, "Maud");
    editor.write(models::parseTyped("HART / SIZE L / 1938").lines);
    REQUIRE(editor.reading().lines.size() == 3);
    CHECK(editor.reading().lines[0] == before.lines[0]);
    CHECK(editor.reading().lines[2] == before.lines[1]);
    CHECK(editor.reading().lines[1].cells[0].by == "Maud");
    editor.write(models::parseTyped("1938").lines);
    REQUIRE(editor.reading().lines.size() == 1);
    CHECK(editor.reading().lines[0] == before.lines[1]);
}

TEST_CASE("Letters restored from a mark are marked restored, and no read letter is changed",
          "[app][gui][restored]")
{
    const models::Reading before = typedReading("HA[..] L+D / 1938");
    ReadingEditor editor(before, "Maud");
    CHECK(editor.restoreFrom("HART LTD").changed);
    const auto& cells = editor.reading().lines[0].cells;
    REQUIRE(cells.size() == 8);
    CHECK(models::plainText(editor.reading().lines[0]) == "HART LTD");
    for (const std::size_t gone : {2u, 3u, 6u}) {
        CHECK(cells[gone].state == CellState::Restored);
        CHECK(cells[gone].by == "Maud");
    }
    for (const std::size_t read : {0u, 1u, 4u, 5u, 7u})
        CHECK(cells[read].state == CellState::Clear);
    CHECK(cells[2].right_px == cells[3].left_px);  // both in the place of the gap
    CHECK(editor.reading().lines[1] == before.lines[1]);
}

TEST_CASE("A stretch of unknown number is restored to the mark's end", "[app][gui][restored]")
{
    ReadingEditor editor(typedReading("GARRAVANE OSK[- - -]"), "Maud");
    CHECK(editor.restoreFrom("GARRAVANE OSKELLAN").changed);
    CHECK(models::plainText(editor.reading().lines[0]) == "GARRAVANE OSKELLAN");
    CHECK(editor.reading().lines[0].cells[13].state == CellState::Restored);
}

TEST_CASE("A mark that is not the line's restores nothing", "[app][gui][restored]")
{
    ReadingEditor editor(typedReading("HA[..] LTD"), "Maud");
    CHECK_FALSE(editor.restoreFrom("MESTRELBY & ESKWITH").why_not.empty());
    ReadingEditor whole(typedReading("HART LTD"), "Maud");
    CHECK_FALSE(whole.restoreFrom("HART LTD").why_not.empty());
    CHECK(models::plainText(whole.reading().lines[0]) == "HART LTD");
}

TEST_CASE("Where person and engine differ, the engine's cell is found", "[app][gui][words]")
{
    const models::Reading proposal = typedReading("HART");
    ReadingEditor editor(proposal, "Maud");
    editor.type("B");
    const models::Line& line = editor.reading().lines[0];
    const models::Cell* seen = gui::differingCell(line.cells[0], line, proposal, "Maud");
    REQUIRE(seen);
    CHECK(gui::cellFace(*seen) == "H");
    CHECK(gui::differingCell(line.cells[1], line, proposal, "Maud") == nullptr);  // the engine's
    editor.goTo({0, 1});
    editor.apply(Edit::Accept);  // agrees
    const models::Line& after = editor.reading().lines[0];
    CHECK(gui::differingCell(after.cells[1], after, proposal, "Maud") == nullptr);
}
