// From the list of makers to the filed record: words, reasons, and what is recorded of the way.
#include <QComboBox>
#include <QLabel>
#include <QPlainTextEdit>
#include <QScrollArea>
#include <catch2/catch.hpp>

#include "app/gui/candidate_list.h"
#include "tests/gui/window_harness.h"

using gui_tests::WindowHarness;

namespace {

void openList(WindowHarness& person)
{
    person.openDrawn();
    person.key(Qt::Key_F11);
    auto list = person.window().findChild<gui::CandidateList*>();
    REQUIRE(person.waitFor([&] { return list->model().rowCount() > 1; }));
}

QString remark(WindowHarness& person)
{
    return person.window().findChild<QLabel*>("filingTrouble")->text();
}

}  // namespace

TEST_CASE("Taking a maker leads to the word for how sure one is, and offers the reasons shown",
          "[app][gui][window]")
{
    WindowHarness person;
    openList(person);
    person.key(Qt::Key_Return, Qt::AltModifier);
    CHECK(person.focus()->objectName() == "certainty");
    person.type("c");
    CHECK(person.session().fields().certainty == models::Certainty::Certain);
    auto reasons = person.window().findChild<QPlainTextEdit*>("reasons");
    CHECK(reasons->toPlainText() == "the letters fit the mark HART LTD");
    CHECK(person.session().fields().reasons == "the letters fit the mark HART LTD");

    SECTION("left open again, nothing is left of them")
    {
        person.key(Qt::Key_Delete, Qt::AltModifier);
        CHECK(person.session().fields().reasons.empty());
    }
    SECTION("what the person wrote stays when another maker is taken")
    {
        reasons->setPlainText("the foot of the T is there");
        person.key(Qt::Key_F11);
        person.key(Qt::Key_Down);
        person.key(Qt::Key_Return);
        CHECK(person.session().fields().maker_id == "marrow");
        CHECK(person.session().fields().reasons == "the foot of the T is there");
    }
    SECTION("another maker taken brings its own")
    {
        person.key(Qt::Key_F11);
        person.key(Qt::Key_Down);
        person.key(Qt::Key_Return);
        CHECK(person.session().fields().reasons == "the first letters are alike");
    }
}

TEST_CASE("Going through alternatives is undone at once, and there and back leaves nothing to undo",
          "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    const models::Reading before = person.session().stamp()->shown;
    REQUIRE(before.lines[0].cells[0].alternatives.size() > 1);
    person.key(Qt::Key_PageDown);
    CHECK(person.session().isTouched());
    person.key(Qt::Key_PageUp);
    CHECK(person.session().stamp()->shown == before);
    CHECK(person.session().undoStack()->count() == 0);
    CHECK_FALSE(person.session().isTouched());
    person.key(Qt::Key_PageDown, Qt::NoModifier, 3);
    REQUIRE(person.session().stamp()->shown != before);
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.session().stamp()->shown == before);
}

TEST_CASE("In a small window what is led to is in view", "[app][gui][window]")
{
    WindowHarness person;
    person.window().resize(800, 500);
    openList(person);
    person.key(Qt::Key_Return, Qt::AltModifier);
    auto scrolled = person.window().findChild<QScrollArea*>("recordScroll");
    for (const char* name : {"certainty", "reasons"}) {
        auto field = person.window().findChild<QWidget*>(name);
        field->setFocus();
        const QRect seen(field->mapTo(scrolled->viewport(), QPoint()), field->size());
        CAPTURE(name);
        CHECK(scrolled->viewport()->rect().contains(seen));
    }
}

TEST_CASE("That makers were looked at early is recorded even where no letter was confirmed",
          "[app][gui][record]")
{
    WindowHarness person;
    openList(person);
    REQUIRE(person.session().stamp()->looked_ahead);
    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(remark(person).contains("No letter is confirmed"));
    person.type("SHT.9");
    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(person.message().contains("No letter of it was confirmed"));
    const auto record = person.sitting().look("SHT.9");
    REQUIRE(record);
    const auto& readings = record->stamps[0].views[0].readings;
    REQUIRE_FALSE(readings.empty());
    CHECK(readings.back().reading.candidates_were_shown == true);
}

TEST_CASE("A photo of which a letter was confirmed is filed without a word about it",
          "[app][gui][record]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_Return);
    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(remark(person).isEmpty());
    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(person.message().contains("Filed as"));
    CHECK_FALSE(person.message().contains("confirmed"));
}
