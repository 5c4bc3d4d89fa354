// The whole record in the window, by key: what can be said at the command line can be said here.
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTextBrowser>
#include <catch2/catch.hpp>

#include "app/gui/archive_pane.h"
#include "app/gui/evidence_pane.h"
#include "app/gui/fact_table.h"
#include "app/gui/record_page.h"
#include "models/archive/standing.h"
#include "tests/gui/window_harness.h"

using gui::FactKind;
using gui_tests::WindowHarness;

namespace {

gui::FactTable& factsOf(WindowHarness& person)
{
    return *person.window().findChild<gui::FactTable*>("facts");
}

// Into the row of this kind, by the keys of the table.
void goToFact(WindowHarness& person, FactKind kind, int column = 1, int number = 0)
{
    gui::FactTable& table = factsOf(person);
    table.setFocus();
    person.key(Qt::Key_Home, Qt::ControlModifier);
    const auto& rows = table.facts().rows();
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (rows[i].kind == kind && number-- == 0)
            person.key(Qt::Key_Down, Qt::NoModifier,
                       static_cast<int>(i) - table.currentIndex().row());
    person.key(Qt::Key_Home);
    person.key(Qt::Key_Right, Qt::NoModifier, column);
    CHECK(rows[static_cast<std::size_t>(table.currentIndex().row())].kind == kind);
}

void openRecordPage(WindowHarness& person)
{
    person.key(Qt::Key_Return, Qt::ShiftModifier, 2);  // both lines are right: gone through
    person.key(Qt::Key_S, Qt::ControlModifier);
}

QString evidenceOf(WindowHarness& person)
{
    return person.window().findChild<gui::EvidencePane*>()->text();
}

void fillField(WindowHarness& person, const char* name, const QString& text)
{
    person.window().findChild<QWidget*>(name)->setFocus();
    person.type(text);
}

void chooseBelt(WindowHarness& person)
{
    person.window().findChild<QWidget*>("itemType")->setFocus();
    person.key(Qt::Key_B);
}

}  // namespace

TEST_CASE("A piece is recorded whole by key", "[app][gui][record]")
{
    WindowHarness person;
    person.openDrawn();
    openRecordPage(person);
    fillField(person, "accessionNumber", "SHT.1");
    chooseBelt(person);
    fillField(person, "owner", "the Trust");
    fillField(person, "placeFound", "Saltmere");
    fillField(person, "condition", "worn");
    goToFact(person, FactKind::Feature);
    person.key(Qt::Key_P);  // present
    goToFact(person, FactKind::Feature, 1, 1);
    person.key(Qt::Key_Space, Qt::NoModifier, 3);  // not looked at, present, absent, cannot be seen
    goToFact(person, FactKind::Part);
    person.type("a f");  // the body, a fitting ... by first letters, then by Space
    goToFact(person, FactKind::Part, 2);
    person.type("at the tab");
    person.key(Qt::Key_Return);
    goToFact(person, FactKind::Method);
    person.key(Qt::Key_S);  // stencil
    goToFact(person, FactKind::NewMeasurement, 0);
    person.type("length");
    person.key(Qt::Key_Tab);
    person.type("36 in");
    person.key(Qt::Key_Tab);
    person.type("tape");
    person.key(Qt::Key_Return);
    goToFact(person, FactKind::NewEvent, 0);
    person.key(Qt::Key_I);  // inspected
    person.type("1941");
    person.key(Qt::Key_Return);
    person.key(Qt::Key_S, Qt::ControlModifier);

    const auto record = person.sitting().look("SHT.1");
    REQUIRE(record);
    CHECK(record->type_id == "belt-1937");
    CHECK(record->owner == "the Trust");
    CHECK(record->place_found == "Saltmere");
    CHECK(record->condition == "worn");
    REQUIRE(record->features.size() == 2);
    CHECK(record->features[0].seen == models::FeatureSeen::Present);
    CHECK(record->features[1].seen == models::FeatureSeen::CannotBeSeen);
    REQUIRE(record->stamps.size() == 1);
    CHECK(record->stamps[0].part != models::StampPart::Unknown);
    CHECK(record->stamps[0].place == "at the tab");
    CHECK(record->stamps[0].method == models::StampMethod::Stencil);
    REQUIRE(record->measurements.size() == 1);
    CHECK(record->measurements[0].what == "length");
    CHECK(record->measurements[0].value == 36);
    CHECK(record->measurements[0].unit == "in");
    CHECK(record->measurements[0].how == "tape");
    REQUIRE(record->dated_events.size() == 1);
    CHECK(record->dated_events[0].kind == models::EventKind::Inspected);
    CHECK(record->dated_events[0].edtf == "1941");
    CHECK(record->dated_events[0].bound == models::DateBound::NotAfter);

    // Told whole in the list of records, by the register's names, both units among it.
    const QString page = gui::recordPage(*record, nullptr, person.sitting().known().get());
    for (const char* words : {"Body belt, Pattern 1937", "Metal end tab", "the Trust", "Saltmere",
                              "worn", "36 in (914.4 mm)", "tape", "present", "cannot be seen",
                              "stencil", "at the tab", "1941"}) {
        CAPTURE(words);
        CHECK(page.contains(words));
    }
}

TEST_CASE("The record says at once what the evidence gives, and what contradicts what",
          "[app][gui][record][dating]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(evidenceOf(person).contains("Folded"));  // first look, then meaning
    person.key(Qt::Key_Escape);
    openRecordPage(person);
    REQUIRE(person.waitFor([&] { return evidenceOf(person).contains("1938"); }));
    CHECK_FALSE(evidenceOf(person).contains("contradicts itself"));
    chooseBelt(person);
    goToFact(person, FactKind::Feature, 1, 1);  // the plated eyelet, from 1950 on
    person.key(Qt::Key_P);
    REQUIRE(person.waitFor([&] { return evidenceOf(person).contains("contradicts itself"); }));
    CHECK(evidenceOf(person).contains("Plated eyelet"));
    person.key(Qt::Key_Z, Qt::ControlModifier);
    REQUIRE(person.waitFor([&] { return !evidenceOf(person).contains("contradicts itself"); }));
}

TEST_CASE("Every fact is undone and survives in a draft", "[app][gui][record][draft]")
{
    WindowHarness person;
    person.openDrawn();
    openRecordPage(person);
    chooseBelt(person);
    goToFact(person, FactKind::Feature);
    person.key(Qt::Key_A);
    const gui::FilingFields said = person.session().fields();
    REQUIRE(said.features.size() == 1);
    goToFact(person, FactKind::NewMeasurement, 0);
    person.type("width");
    person.key(Qt::Key_Return);
    REQUIRE(person.waitFor([&] { return person.session().fields().measurements.size() == 1; }));
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.session().fields() == said);
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.session().fields().features.empty());
    person.key(Qt::Key_Y, Qt::ControlModifier);
    CHECK(person.session().fields() == said);
    QTest::qWait(60);
    person.restart();
    person.window().restoreTable();
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.session().fields() == said);
}

TEST_CASE("What cannot be understood is told before it is filed", "[app][gui][record]")
{
    WindowHarness person;
    person.openDrawn();
    openRecordPage(person);
    goToFact(person, FactKind::NewMeasurement, 0);
    person.type("width");
    person.key(Qt::Key_Tab);
    person.type("wide");
    person.key(Qt::Key_Return);
    const auto trouble = person.window().findChild<QLabel*>("filingTrouble");
    CHECK(trouble->text().contains("width"));
    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(person.sitting().record() == nullptr);
    CHECK(person.message().contains("914 mm"));
    goToFact(person, FactKind::Measurement);
    person.key(Qt::Key_Delete);
    CHECK(trouble->text().isEmpty());
}

TEST_CASE("A filed record is corrected, nothing is overwritten, and rivals stand side by side",
          "[app][gui][record]")
{
    WindowHarness person;
    person.openDrawn();
    openRecordPage(person);
    fillField(person, "accessionNumber", "SHT.2");
    fillField(person, "owner", "the Trust");
    chooseBelt(person);
    goToFact(person, FactKind::Feature);
    person.key(Qt::Key_P);
    goToFact(person, FactKind::NewMeasurement, 0);
    person.type("length");
    person.key(Qt::Key_Tab);
    person.type("914 mm");
    person.key(Qt::Key_Return);
    fillField(person, "date", "1938");
    person.key(Qt::Key_S, Qt::ControlModifier);
    REQUIRE(person.sitting().record());

    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(person.sitting().unfiled().empty());
    CHECK(person.window().findChild<QLineEdit*>("accessionNumber")->isReadOnly());
    fillField(person, "owner", ", on loan");
    goToFact(person, FactKind::Feature);
    person.type("c");  // cannot be seen
    goToFact(person, FactKind::Measurement);
    person.key(Qt::Key_Delete);
    fillField(person, "whyChanged", "the tape had shrunk");
    fillField(person, "date", "?");
    person.window().findChild<QComboBox*>("stands")->setFocus();
    person.key(Qt::Key_Up);  // beside what was concluded, as a rival
    CHECK(person.sitting().unfiled().size() == 1);
    person.key(Qt::Key_S, Qt::ControlModifier);

    const auto record = person.sitting().look("SHT.2");
    REQUIRE(record);
    CHECK(record->owner == "the Trust, on loan");
    REQUIRE(record->features.size() == 2);
    CHECK(models::standingFeatures(*record).at(0).seen == models::FeatureSeen::CannotBeSeen);
    CHECK(record->measurements.size() == 1);
    CHECK(models::standingMeasurements(*record).empty());
    CHECK(std::any_of(record->corrections.begin(), record->corrections.end(), [](const auto& one) {
        return one.field == "withdrawn" && one.value == "the tape had shrunk";
    }));
    CHECK(models::standingAttributions(*record).size() == 2);
    CHECK(record->stamps.size() == 1);
    CHECK(person.sitting().unfiled().empty());
    const QString page = gui::recordPage(*record);
    CHECK(page.contains("Rival conclusions"));
    CHECK(page.contains("taken back"));
}

TEST_CASE("A corrected record that was not filed again opens as it was left, without new stamps",
          "[app][gui][record][draft]")
{
    WindowHarness person;
    person.openDrawn();
    openRecordPage(person);
    fillField(person, "accessionNumber", "SHT.3");
    person.key(Qt::Key_S, Qt::ControlModifier);
    REQUIRE(person.sitting().record());
    person.key(Qt::Key_S, Qt::ControlModifier);
    fillField(person, "owner", "A. Quay");
    QTest::qWait(60);
    person.restart();
    person.sitting().takeUp(person.sitting().earlierDrafts());
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.session().fields().owner == "A. Quay");
    person.sitting().fileRecord({});
    const auto record = person.sitting().look("SHT.3");
    CHECK(record->owner == "A. Quay");
    CHECK(record->stamps.size() == 1);
}

TEST_CASE("A new piece takes type, owner and place from the one before, and leaves them out by key",
          "[app][gui][record]")
{
    WindowHarness person;
    person.open({gui_tests::drawPhoto(person.folder(), "a.png"),
                 gui_tests::drawPhoto(person.folder(), "b.png")});
    openRecordPage(person);
    chooseBelt(person);
    fillField(person, "owner", "the Trust");
    fillField(person, "condition", "torn");
    person.key(Qt::Key_S, Qt::ControlModifier);
    person.key(Qt::Key_N, Qt::ControlModifier);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.session().fields().type_id == "belt-1937");
    CHECK(person.session().fields().owner == "the Trust");
    CHECK(person.session().fields().condition.empty());
    CHECK(person.sitting().unfiled().empty());  // lent, not said
    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(person.window().findChild<QLabel*>("lentWords")->text().contains("owner"));
    person.window().findChild<QPushButton*>("leaveOut")->setFocus();
    person.key(Qt::Key_Space);
    CHECK(person.session().fields().owner.empty());
    CHECK(person.session().fields().type_id.empty());
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.session().fields().owner == "the Trust");
}

TEST_CASE("The list of records tells what each record's evidence gives", "[app][gui][record]")
{
    WindowHarness person;
    person.openDrawn();
    openRecordPage(person);
    fillField(person, "accessionNumber", "SHT.4");
    person.key(Qt::Key_S, Qt::ControlModifier);
    person.key(Qt::Key_F12);
    const auto page = person.window().findChild<QTextBrowser*>("recordText");
    CHECK(person.waitFor([&] {
        return page->toPlainText().contains("What the evidence gives now") &&
               page->toPlainText().contains("1938");
    }));
}
