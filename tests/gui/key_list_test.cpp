#include <QAction>
#include <catch2/catch.hpp>
#include <set>

#include "app/gui/candidate_list.h"
#include "app/gui/help_overlay.h"
#include "app/gui/key_list.h"
#include "app/gui/letter_keys.h"
#include "app/gui/message_bar.h"
#include "app/gui/photo_view.h"
#include "app/gui/tray.h"
#include "tests/gui/window_harness.h"

using gui::KeyPlace;
using gui_tests::WindowHarness;

namespace {

QKeyEvent eventOf(const QKeySequence& press)
{
    const QKeyCombination keys = press[0];
    const bool sign =
        keys.keyboardModifiers() == Qt::NoModifier && keys.key() > 0x20 && keys.key() < 0x7f;
    return {QEvent::KeyPress, keys.key(), keys.keyboardModifiers(),
            sign ? QString(QChar(keys.key())) : QString()};
}

std::set<QString> pressesAt(KeyPlace place)
{
    std::set<QString> presses;
    for (const gui::KeyGroup& group : gui::keyGroups())
        if (group.place == place)
            for (const gui::KeyHelp& help : group.keys)
                for (const QKeySequence& press : help.presses)
                    presses.insert(press.toString());
    return presses;
}

// Two stamps, so that there is somewhere to go in every direction.
std::shared_ptr<gui_tests::FakeScript> twoStamps()
{
    auto script = std::make_shared<gui_tests::FakeScript>();
    script->stamps = {{"HART LTD", "1938"}, {"MARROW", "SIZE 3"}};
    return script;
}

}  // namespace

TEST_CASE("The help lists every key of the window, and the window has every key it lists",
          "[app][gui][keys]")
{
    WindowHarness person;
    std::set<QString> listened;
    for (const QAction* action : person.window().actions())
        for (const QKeySequence& press : action->shortcuts())
            CHECK(listened.insert(press.toString()).second);  // no key does two things
    CHECK(listened == pressesAt(KeyPlace::Window));
}

TEST_CASE("The help lists every key of the letters: each edit and each move has one",
          "[app][gui][keys]")
{
    std::set<gui::Edit> edits;
    std::set<gui::Move> moves;
    for (const gui::KeyGroup& group : gui::keyGroups()) {
        if (group.place != KeyPlace::Letters)
            continue;
        for (const gui::KeyHelp& help : group.keys)
            for (const QKeySequence& press : help.presses) {
                CAPTURE(press.toString().toStdString());
                const auto key = gui::letterKey(eventOf(press), false);
                REQUIRE(key);
                if (key->edit)
                    edits.insert(*key->edit);
                if (key->move)
                    CHECK(moves.insert(*key->move).second);
            }
    }
    for (int edit = 0; edit <= static_cast<int>(gui::Edit::RoleOther); ++edit) {
        CAPTURE(edit);
        CHECK(edits.count(static_cast<gui::Edit>(edit)) == 1);
    }
    for (int move = 0; move <= static_cast<int>(gui::Move::LastWorthALook); ++move) {
        CAPTURE(move);
        CHECK(moves.count(static_cast<gui::Move>(move)) == 1);
    }
}

TEST_CASE("Keys of the letters and keys of the window do not get in each other's way",
          "[app][gui][keys]")
{
    const std::set<QString> letters = pressesAt(KeyPlace::Letters);
    for (const QString& press : pressesAt(KeyPlace::Window)) {
        CAPTURE(press.toStdString());
        CHECK_FALSE(letters.count(press));
    }
}

TEST_CASE("A walk through the help: each key is pressed where it belongs, and is heard",
          "[app][gui][keys]")
{
    const std::set<QString> apart{"Ctrl+O", "Ctrl+Q"};  // a dialog of the desktop; the end
    for (const gui::KeyGroup& group : gui::keyGroups())
        for (const gui::KeyHelp& help : group.keys)
            for (const QKeySequence& press : help.presses) {
                if (apart.count(press.toString()))
                    continue;
                CAPTURE(press.toString().toStdString(), help.does.toStdString());
                CHECK_FALSE(help.does.isEmpty());
                CHECK_FALSE(help.keys.isEmpty());
                WindowHarness person(twoStamps());
                person.openDrawn();
                REQUIRE(person.sitting().session());
                if (group.place == KeyPlace::Photo)
                    person.key(Qt::Key_F9);
                if (group.place == KeyPlace::Meaning) {
                    person.key(Qt::Key_F11);
                    auto list = person.window().findChild<gui::CandidateList*>();
                    REQUIRE(person.waitFor([&] { return list->model().rowCount() > 1; }));
                    person.key(Qt::Key_Down);  // so that there is somewhere to go
                    person.key(Qt::Key_Right);
                }
                if (group.place == KeyPlace::Record) {
                    person.key(Qt::Key_S, Qt::ControlModifier);
                    person.window().findChild<QWidget*>("facts")->setFocus();
                }
                int triggered = 0;
                for (QAction* action : person.window().actions())
                    QObject::connect(action, &QAction::triggered, [&] { ++triggered; });
                QKeyEvent event = eventOf(press);
                if (group.place == KeyPlace::Window) {
                    QTest::keyClick(person.focus(), press[0].key(), press[0].keyboardModifiers());
                    CHECK(triggered == 1);
                } else {
                    QApplication::sendEvent(person.focus(), &event);
                    CHECK(event.isAccepted());
                }
            }
}

TEST_CASE("The list of photos and that of makers answer to Enter", "[app][gui][keys]")
{
    WindowHarness person;
    person.open({gui_tests::drawPhoto(person.folder(), "a.png"),
                 gui_tests::drawPhoto(person.folder(), "b.png")});
    person.key(Qt::Key_F10);
    REQUIRE(person.focus()->objectName() == "toReadList");
    person.key(Qt::Key_Right);
    person.key(Qt::Key_Return);
    CHECK(person.sitting().place() == 1);
}
