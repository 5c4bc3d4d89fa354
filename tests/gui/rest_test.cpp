// What is left of a stamp or a photo is right, or nothing: said by one key.
#include <QLabel>
#include <catch2/catch.hpp>

#include "app/gui/line_edits.h"
#include "app/gui/photo_work.h"
#include "models/reading.h"
#include "tests/gui/readings.h"
#include "tests/gui/window_harness.h"

using gui::CellPlace;
using gui::Edit;
using gui::PhotoState;
using gui_tests::WindowHarness;

namespace {

constexpr auto ctrl_shift = Qt::ControlModifier | Qt::ShiftModifier;

std::size_t lettersOf(const models::Reading& reading, const std::string& reader)
{
    std::size_t count = 0;
    for (const models::Line& line : reading.lines)
        for (const models::Cell& cell : line.cells)
            count += cell.by == reader ? 1 : 0;
    return count;
}

std::shared_ptr<gui_tests::FakeScript> stampsOf(std::vector<std::vector<std::string>> stamps)
{
    auto script = std::make_shared<gui_tests::FakeScript>();
    script->stamps = std::move(stamps);
    script->certainty = 0.95;
    return script;
}

}  // namespace

TEST_CASE("The rest of a stamp is confirmed by one key, and undone by one", "[app][gui][rest]")
{
    WindowHarness person(stampsOf({{"HART LTD", "1938"}, {"SIZE 3"}}));
    person.openDrawn();
    person.type("B");  // mended; the rest is right
    REQUIRE(lettersOf(person.session().stamp()->shown, "Maud Pell") == 1);
    person.key(Qt::Key_Return, ctrl_shift);
    CHECK(lettersOf(person.session().stamp()->shown, "Maud Pell") == 12);
    CHECK(person.text(0) == "BART LTD");
    CHECK(person.session().stamp()->gone_through);
    // Only this stamp's: the other is the engine's still.
    CHECK(lettersOf(person.session().stamps()[1].shown, "Maud Pell") == 0);
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(lettersOf(person.session().stamp()->shown, "Maud Pell") == 1);
    person.key(Qt::Key_Y, Qt::ControlModifier);
    CHECK(lettersOf(person.session().stamp()->shown, "Maud Pell") == 12);
}

TEST_CASE("The key for the rest leads through every unsure letter before it confirms any",
          "[app][gui][rest]")
{
    // A question mark is a cell that the reader is not sure of.
    WindowHarness person(stampsOf({{"HA?T LTD", "19?8"}}));
    person.openDrawn();
    const auto unsure = gui::notLookedAt(*person.session().stamp(), "Maud Pell", std::nullopt);
    REQUIRE(unsure == std::vector<CellPlace>{{0, 2}, {1, 2}});
    person.key(Qt::Key_Return, ctrl_shift);
    CHECK(person.session().editor().place() == CellPlace{0, 2});
    CHECK(person.message().contains("2 unsure letters"));
    person.key(Qt::Key_Return, ctrl_shift);
    CHECK(person.session().editor().place() == CellPlace{1, 2});
    CHECK(lettersOf(person.session().stamp()->shown, "Maud Pell") == 0);
    person.type("3");
    CHECK(gui::notLookedAt(*person.session().stamp(), "Maud Pell", std::nullopt).empty());
    person.key(Qt::Key_Return, ctrl_shift);
    CHECK(lettersOf(person.session().stamp()->shown, "Maud Pell") == 12);
}

TEST_CASE("Letters that were looked at stay so where they stand after others came or went",
          "[app][gui][rest]")
{
    const auto before = gui_tests::engineReading({"HART", "1938", "SIZE"});
    const std::set<CellPlace> seen{{0, 1}, {1, 0}, {1, 3}, {2, 2}};
    auto after = before;
    after.lines.erase(after.lines.begin());
    CHECK(gui::seenAfter(seen, before, after) == std::set<CellPlace>{{0, 0}, {0, 3}, {1, 2}});
    CHECK(gui::seenAfter({{0, 0}, {0, 3}, {1, 2}}, after, before) ==
          std::set<CellPlace>{{1, 0}, {1, 3}, {2, 2}});
    after = before;
    gui::eraseCell(after.lines[1], 1);
    CHECK(gui::seenAfter(seen, before, after) ==
          std::set<CellPlace>{{0, 1}, {1, 0}, {1, 2}, {2, 2}});
    after = before;
    after.lines[1].cells[3] = models::clearCell("5");
    CHECK(gui::seenAfter(seen, before, after) == seen);
}

TEST_CASE("Lines with nothing confirmed go by one key from wherever one is, and come back",
          "[app][gui][rest]")
{
    gui::ReadingEditor editor(gui_tests::engineReading({"XX", "HART", "YY", "1938", "ZZ"}), "Maud");
    CHECK_FALSE(editor.apply(Edit::RemoveOtherLines).changed);  // that would take all
    CHECK(editor.reading().lines.size() == 5);
    editor.goTo({1, 0});
    editor.apply(Edit::AcceptLine);
    editor.goTo({3, 0});
    editor.apply(Edit::Accept);  // one letter is enough
    CHECK(editor.apply(Edit::RemoveOtherLines).changed);
    REQUIRE(editor.reading().lines.size() == 2);
    CHECK(models::plainText(editor.reading().lines[0]) == "HART");
    CHECK(models::plainText(editor.reading().lines[1]) == "1938");
    CHECK(editor.place() == CellPlace{1, 1});
    CHECK_FALSE(editor.apply(Edit::RemoveOtherLines).why_not.empty());

    WindowHarness person(stampsOf({{"HART LTD", "XX", "YY"}}));
    person.openDrawn();
    person.key(Qt::Key_Return, Qt::ShiftModifier);
    person.key(Qt::Key_Delete, ctrl_shift);
    CHECK(person.session().stamp()->shown.lines.size() == 1);
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.session().stamp()->shown.lines.size() == 3);
}

TEST_CASE("Stamps with nothing confirmed are taken out by one key, and come back",
          "[app][gui][rest]")
{
    WindowHarness person(stampsOf({{"HART LTD"}, {"IIII"}, {"LLL"}}));
    person.openDrawn();
    person.key(Qt::Key_Backspace, ctrl_shift);
    CHECK(person.session().stamps().size() == 3);
    CHECK(person.message().contains("No stamp has confirmed letters"));
    person.key(Qt::Key_Return, ctrl_shift);
    person.key(Qt::Key_Backspace, ctrl_shift);
    REQUIRE(person.session().stamps().size() == 1);
    CHECK(person.text() == "HART LTD");
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.session().stamps().size() == 3);
    CHECK(person.session().current() == 0);
    // One taken out by itself leaves the one after it in hand.
    person.key(Qt::Key_Right, Qt::ControlModifier);
    person.key(Qt::Key_Delete, Qt::ControlModifier);
    CHECK(person.session().stamps().size() == 2);
    CHECK(person.text() == "LLL");
}

TEST_CASE("A photo of which all is right is confirmed, filed and left by one key",
          "[app][gui][rest]")
{
    WindowHarness person(stampsOf({{"HART LTD"}, {"19?8"}}));
    person.open({gui_tests::drawPhoto(person.folder(), "a.png"),
                 gui_tests::drawPhoto(person.folder(), "b.png")});
    gui::PhotoQueue& queue = *person.sitting().queue();
    person.key(Qt::Key_S, ctrl_shift);  // the second stamp was never gone to
    CHECK(person.session().current() == 1);
    CHECK(person.message().contains("was not gone to yet"));
    CHECK(queue.state(0) != PhotoState::Filed);
    CHECK(lettersOf(person.session().stamps()[0].shown, "Maud Pell") == 8);
    CHECK(lettersOf(person.session().stamps()[1].shown, "Maud Pell") == 0);
    person.key(Qt::Key_S, ctrl_shift);  // nor its unsure letter looked at
    CHECK(person.session().editor().place() == CellPlace{0, 2});
    CHECK(queue.state(0) != PhotoState::Filed);
    person.key(Qt::Key_S, ctrl_shift);
    REQUIRE(person.waitFor([&] { return queue.state(0) == PhotoState::Filed; }));
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.sitting().place() == 1);
    const auto found = person.sitting().find({});
    REQUIRE(found.size() == 1);
    const auto record = person.sitting().look(found[0].id);
    REQUIRE(record);
    REQUIRE(record->stamps.size() == 2);
    for (const auto& stamp : record->stamps) {
        const models::Reading& own = stamp.views.at(0).readings.back().reading;
        CHECK(own.reader == "Maud Pell");
        CHECK(lettersOf(own, "Maud Pell") == own.lines[0].cells.size());
    }
}
