// Sentences go when what they are about is over, and are of the photo in hand.
#include <QLabel>
#include <catch2/catch.hpp>
#include <fstream>

#include "tests/gui/window_harness.h"

using gui::PhotoState;
using gui_tests::WindowHarness;

namespace {

bool opensNext(WindowHarness& person)
{
    person.key(Qt::Key_PageDown, Qt::ControlModifier);
    return person.waitFor([&] { return person.sitting().session() != nullptr; });
}

}  // namespace

TEST_CASE("A sentence about what was done goes with the next thing done", "[app][gui][message]")
{
    WindowHarness person;
    person.openDrawn();
    const auto say = [&] {
        person.key(Qt::Key_E, Qt::ControlModifier);
        REQUIRE(person.message().contains("no other stamp"));
    };
    say();
    person.key(Qt::Key_F1);  // looking something up is not doing something
    person.key(Qt::Key_F1);
    CHECK(person.message().contains("no other stamp"));
    person.key(Qt::Key_Right);
    CHECK(person.message().isEmpty());
    say();
    person.type("B");
    CHECK(person.message().isEmpty());
    say();
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.message().isEmpty());
}

TEST_CASE("A sentence about putting photos together goes when that is undone",
          "[app][gui][message]")
{
    WindowHarness person;
    person.open({gui_tests::drawPhoto(person.folder(), "a.png"),
                 gui_tests::drawPhoto(person.folder(), "b.png")});
    REQUIRE(opensNext(person));
    person.key(Qt::Key_I, Qt::ControlModifier);
    CHECK(person.message().contains("same piece"));
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.message().isEmpty());
}

TEST_CASE("A sentence about a photo goes with that photo", "[app][gui][message]")
{
    auto script = std::make_shared<gui_tests::FakeScript>();
    script->stamps.clear();
    WindowHarness person(script);
    person.open({gui_tests::drawPhoto(person.folder(), "bare.png"),
                 gui_tests::drawPhoto(person.folder(), "strap.png")});
    CHECK(person.message().contains("No stamp was found in bare.png"));
    script->stamps = {{"HART LTD"}};
    REQUIRE(opensNext(person));
    CHECK(person.message().isEmpty());
}

TEST_CASE("That a photo cannot be read goes when it is read after all", "[app][gui][message]")
{
    WindowHarness person;
    const auto file = person.folder() / "strap.png";
    std::ofstream(file) << "half a photo";
    person.open({file});
    CHECK(person.message().contains("strap.png"));
    gui_tests::drawPhoto(person.folder(), "strap.png");
    person.key(Qt::Key_R, Qt::ControlModifier);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.message().isEmpty());
    CHECK(person.sitting().queue()->state(0) == PhotoState::Read);
}

TEST_CASE("What of a dropped folder was left out is said in a sentence", "[app][gui][message]")
{
    WindowHarness person;
    const auto folder = gui_tests::drawFolder(person.folder(), 2);
    std::filesystem::create_directories(folder / "sub");
    gui_tests::drawPhoto(folder / "sub", "white.png");
    person.open({folder});
    CHECK(person.sitting().queue()->rowCount() == 2);
    CHECK(person.message().contains("Folders in lot were left out"));
    CHECK(person.message().contains("sub."));
    CHECK(person.message().contains("no photos were left out: 1"));
    REQUIRE(opensNext(person));
    CHECK(person.message().isEmpty());
}

TEST_CASE("Trouble met while reading ahead stands at its photo's card, not over the one in hand",
          "[app][gui][message][ahead]")
{
    WindowHarness person(std::make_shared<gui_tests::FakeScript>(), gui_tests::readAhead);
    const auto bad = gui_tests::writeLetter(person.folder());
    person.open({gui_tests::drawPhoto(person.folder(), "strap.png"), bad});
    gui::PhotoQueue& queue = *person.sitting().queue();
    REQUIRE(person.waitFor([&] { return queue.state(1) == PhotoState::Unreadable; }));
    CHECK(person.message().isEmpty());
    const QString why = queue.data(queue.index(1), Qt::ToolTipRole).toString();
    CHECK(why.contains("letter.jpg"));
    CHECK(why != QString::fromStdString(bad.string()));
    CHECK(queue.data(queue.index(1), Qt::AccessibleTextRole).toString().contains(why));
    person.key(Qt::Key_PageDown, Qt::ControlModifier);
    REQUIRE(person.waitFor([&] { return person.message() == why; }));
}

TEST_CASE("The foot of the window tells what can be done with a photo that cannot be read",
          "[app][gui][message]")
{
    WindowHarness person;
    const auto bad = gui_tests::writeLetter(person.folder());
    person.open({bad});
    const QString hints = person.window().findChild<QLabel*>("hints")->accessibleName();
    CHECK(hints.contains("Ctrl+R"));
    CHECK(hints.contains("Ctrl+W"));
    CHECK_FALSE(hints.contains("letter is right"));
}

TEST_CASE("The drawer counts what is not filed while photos are read ahead",
          "[app][gui][message][ahead]")
{
    WindowHarness person(std::make_shared<gui_tests::FakeScript>(), gui_tests::readAhead);
    const auto bad = gui_tests::writeLetter(person.folder());
    person.open({gui_tests::drawPhoto(person.folder(), "strap.png"), bad});
    person.key(Qt::Key_F10);
    const auto title = person.window().findChild<QLabel*>("trayTitle");
    CHECK(person.waitFor([&] { return title->text().contains("1 not filed"); }, 5000));
}
