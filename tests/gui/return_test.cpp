// The window stands as it stood, however the last one ended.
#include <QPlainTextEdit>
#include <catch2/catch.hpp>

#include "app/gui/stamp_view.h"
#include "app/gui/table_state.h"
#include "tests/gui/window_harness.h"

using gui_tests::WindowHarness;

namespace {

// What is kept survives any end; this one keeps nothing more.
bool returns(WindowHarness& person)
{
    QTest::qWait(20);
    person.restart();
    person.window().restoreTable();
    return person.waitFor([&] { return person.sitting().session() != nullptr; });
}

}  // namespace

TEST_CASE("Text that is not understood yet comes back, with the keys in it", "[app][gui][return]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_T, Qt::ControlModifier);
    person.key(Qt::Key_End);
    person.type(" (A|B");
    REQUIRE(returns(person));
    const auto text = person.window().findChild<QPlainTextEdit*>("typedText");
    CHECK(text->toPlainText() == "HART LTD (A|B\n1938");
    CHECK(person.focus() == text);
    text->setPlainText("HART");
    REQUIRE(returns(person));
    CHECK(person.window().findChild<QPlainTextEdit*>("typedText")->toPlainText() == "HART");
}

TEST_CASE("The field that had the keys has them again", "[app][gui][return]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_S, Qt::ControlModifier);
    person.key(Qt::Key_Tab, Qt::NoModifier, 2);
    REQUIRE(person.focus()->objectName() == "owner");
    REQUIRE(returns(person));
    CHECK(person.focus()->objectName() == "owner");
    person.key(Qt::Key_Escape);
    REQUIRE(returns(person));
    CHECK(person.focus()->objectName() == "stampView");
}

TEST_CASE("How one looks comes back, and that reading ahead is paused", "[app][gui][return]")
{
    WindowHarness person(std::make_shared<gui_tests::FakeScript>(), gui_tests::readAhead);
    person.openDrawn();
    person.key(Qt::Key_P, Qt::ControlModifier);
    person.key(Qt::Key_G, Qt::ControlModifier);
    person.key(Qt::Key_Plus, Qt::ControlModifier);
    person.key(Qt::Key_Up, Qt::ControlModifier | Qt::ShiftModifier);
    const auto view = [&] { return person.window().findChild<gui::StampView*>(); };
    const double zoom = view()->zoomed();
    const gui::Tones tones = view()->tones();
    REQUIRE(zoom > 1);
    REQUIRE_FALSE(tones == gui::Tones{});
    REQUIRE(returns(person));
    CHECK_FALSE(person.sitting().readsAhead());
    CHECK(view()->hasMagnifier());
    CHECK(view()->zoomed() == Approx(zoom));
    CHECK(view()->tones() == tones);
}

TEST_CASE("Light and letter case chosen at an empty table come back", "[app][gui][return]")
{
    WindowHarness person;
    person.key(Qt::Key_D, Qt::ControlModifier);
    person.key(Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
    QTest::qWait(20);
    const auto kept = gui::keptTable(person.archiveFolder() / "table.json");
    REQUIRE(kept);
    CHECK(kept->window.dusk);
    CHECK(kept->window.as_typed);
    person.restart();
    person.window().restoreTable();
    person.openDrawn();
    person.type("b");
    CHECK(person.text() == "bART LTD");
}
