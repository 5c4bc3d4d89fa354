// How far each photo is: after a restart, without a stamp, set aside, off the table.
#include <QLabel>
#include <catch2/catch.hpp>

#include "app/gui/to_read_list.h"
#include "tests/gui/window_harness.h"

using gui::PhotoState;
using gui_tests::WindowHarness;

namespace {

constexpr auto aside_keys = Qt::ControlModifier | Qt::ShiftModifier;

bool isRead(WindowHarness& person)
{
    return person.waitFor([&] { return person.sitting().session() != nullptr; });
}

bool goesTo(WindowHarness& person, int place)
{
    person.sitting().goTo(place);
    return isRead(person);
}

}  // namespace

TEST_CASE("After a restart the cards tell what was begun by what is on the disk",
          "[app][gui][laid-by]")
{
    WindowHarness person(std::make_shared<gui_tests::FakeScript>(), gui_tests::readAhead);
    person.open({gui_tests::drawFolder(person.folder(), 4)});
    person.type("B");
    REQUIRE(goesTo(person, 1));
    person.type("C");
    REQUIRE(goesTo(person, 3));
    person.restart();
    person.window().restoreTable();
    gui::PhotoQueue& queue = *person.sitting().queue();
    const auto begun = [&] {
        return queue.state(0) == PhotoState::Begun && queue.state(1) == PhotoState::Begun;
    };
    CHECK(begun());
    REQUIRE(person.waitFor([&] { return queue.state(2) == PhotoState::Read; }));
    CHECK(begun());
    REQUIRE(goesTo(person, 1));
    CHECK(person.text() == "CART LTD");
    CHECK(queue.state(1) == PhotoState::Begun);
}

TEST_CASE("A photo without a stamp says so and is passed over, until one is outlined",
          "[app][gui][laid-by]")
{
    auto script = std::make_shared<gui_tests::FakeScript>();
    script->stamps.clear();
    WindowHarness person(script, gui_tests::readAhead);
    person.open({gui_tests::drawFolder(person.folder(), 2)});
    gui::PhotoQueue& queue = *person.sitting().queue();
    CHECK(queue.state(0) == PhotoState::NoStamp);
    REQUIRE(person.waitFor([&] { return queue.state(1) == PhotoState::NoStamp; }));
    CHECK(queue.data(queue.index(1)).toString().contains("no stamp"));
    CHECK(queue.stillToRead() == 0);
    CHECK(person.window().findChild<QLabel*>("hints")->text().contains("F9"));
    person.key(Qt::Key_N, Qt::ControlModifier);
    CHECK(person.sitting().place() == 0);
    CHECK(person.message().contains("without a stamp"));
    person.key(Qt::Key_F9);
    person.key(Qt::Key_Insert);
    CHECK(queue.state(0) == PhotoState::Begun);
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(queue.state(0) == PhotoState::NoStamp);
}

TEST_CASE("A photo is set aside by key, passed over, kept so, and taken up again",
          "[app][gui][laid-by]")
{
    WindowHarness person;
    person.open({gui_tests::drawFolder(person.folder(), 3)});
    const auto state = [&] { return person.sitting().queue()->state(0); };
    person.key(Qt::Key_N, aside_keys);
    CHECK(state() == PhotoState::SetAside);
    CHECK(person.message().contains("set aside"));
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(state() == PhotoState::Read);
    CHECK(person.message().isEmpty());
    person.key(Qt::Key_Y, Qt::ControlModifier);
    CHECK(state() == PhotoState::SetAside);
    for (const int next : {1, 2, 1}) {
        person.key(Qt::Key_N, Qt::ControlModifier);
        REQUIRE(isRead(person));
        CHECK(person.sitting().place() == next);
    }
    CHECK(person.sitting().unfiled().isEmpty());
    person.restart();
    person.window().restoreTable();
    CHECK(state() == PhotoState::SetAside);
    REQUIRE(goesTo(person, 0));
    CHECK(state() == PhotoState::SetAside);
    person.key(Qt::Key_N, aside_keys);
    CHECK(state() == PhotoState::Read);
}

TEST_CASE("A photo is taken off the table by key: its file and draft stay, and it comes back",
          "[app][gui][laid-by]")
{
    WindowHarness person;
    const auto folder = gui_tests::drawFolder(person.folder(), 3);
    person.open({folder});
    gui::PhotoQueue* queue = person.sitting().queue();
    person.type("B");
    person.key(Qt::Key_W, Qt::ControlModifier);
    REQUIRE(isRead(person));
    CHECK(person.sitting().place() == 1);
    CHECK(queue->onTable() == 2);
    CHECK(person.message().contains("photo0.png is off the table"));
    CHECK(std::filesystem::exists(folder / "photo0.png"));
    CHECK_FALSE(std::filesystem::is_empty(person.archiveFolder() / "drafts"));
    person.key(Qt::Key_PageUp, Qt::ControlModifier);
    CHECK(person.sitting().place() == 1);  // there is none before it

    person.type("X");  // what was done last is undone first
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.text() == "HART LTD");
    CHECK(queue->onTable() == 2);
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.sitting().place() == 0);
    CHECK(person.text() == "BART LTD");
    CHECK(queue->state(0) == PhotoState::Begun);
    person.key(Qt::Key_Y, Qt::ControlModifier);
    CHECK(queue->onTable() == 2);

    person.restart();
    person.window().restoreTable();
    queue = person.sitting().queue();
    CHECK(queue->rowCount() == 2);
    person.open({folder / "photo0.png"});
    REQUIRE(person.waitFor([&] { return person.sitting().session() && person.text() != ""; }));
    CHECK(person.text() == "BART LTD");
}

TEST_CASE("The chosen card is taken off the table, and with the last one the hands are empty",
          "[app][gui][laid-by]")
{
    WindowHarness person;
    person.open({gui_tests::drawFolder(person.folder(), 3)});
    auto list = person.window().findChild<gui::ToReadList*>();
    person.sitting().joinPiece(1, 0);
    person.sitting().joinPiece(2, 0);
    person.key(Qt::Key_F10);
    person.key(Qt::Key_W, Qt::ControlModifier);  // those that were with it stay together
    REQUIRE(isRead(person));
    CHECK(person.sitting().queue()->pieceOf(1) == -1);
    CHECK(person.sitting().queue()->pieceOf(2) == 1);
    CHECK(list->isRowHidden(0));
    person.key(Qt::Key_End);
    person.key(Qt::Key_W, Qt::ControlModifier);
    CHECK(person.sitting().place() == 1);
    CHECK(list->currentIndex().row() == 1);
    person.key(Qt::Key_W, Qt::ControlModifier);
    CHECK(person.sitting().place() == -1);
    CHECK(person.sitting().queue()->onTable() == 0);
    person.key(Qt::Key_N, Qt::ControlModifier);
    CHECK(person.message().contains("Ctrl+O"));
    person.key(Qt::Key_Z, Qt::ControlModifier);
    REQUIRE(isRead(person));
    CHECK(person.sitting().place() == 1);
    CHECK(person.sitting().queue()->pieceOf(1) == -1);
}

TEST_CASE("What was done to the table and to letters by turns is undone and done again by turns",
          "[app][gui][laid-by]")
{
    WindowHarness person;
    person.open({gui_tests::drawFolder(person.folder(), 3)});
    gui::PhotoQueue& queue = *person.sitting().queue();
    person.sitting().setAside(1);
    person.type("B");
    person.sitting().setAside(2);
    const auto is = [&](const std::string& text, bool second_aside, bool third_aside) {
        CHECK(person.text() == text);
        CHECK((queue.state(1) == PhotoState::SetAside) == second_aside);
        CHECK((queue.state(2) == PhotoState::SetAside) == third_aside);
    };
    const auto press = [&](Qt::Key key) { person.key(key, Qt::ControlModifier); };
    is("BART LTD", true, true);
    press(Qt::Key_Z);
    is("BART LTD", true, false);
    press(Qt::Key_Z);
    is("HART LTD", true, false);
    press(Qt::Key_Z);
    is("HART LTD", false, false);
    press(Qt::Key_Y);
    is("HART LTD", true, false);
    press(Qt::Key_Y);
    is("BART LTD", true, false);
    press(Qt::Key_Y);
    is("BART LTD", true, true);
}
