#include <QLabel>
#include <QLineEdit>
#include <QTableView>
#include <catch2/catch.hpp>

#include "app/gui/archive_pane.h"
#include "app/gui/candidate_list.h"
#include "app/gui/tray.h"
#include "tests/gui/window_harness.h"

using gui_tests::WindowHarness;

TEST_CASE("By keyboard alone: open, correct two cells, file, find again, open the record",
          "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    REQUIRE(person.sitting().session());
    REQUIRE(person.text(0) == "HART LTD");
    REQUIRE(person.focus()->objectName() == "stampView");

    // The first letter is a B, the last digit nobody can tell.
    person.type("B");
    person.key(Qt::Key_Down);
    person.key(Qt::Key_End);
    person.key(Qt::Key_Left);
    person.type("+");
    CHECK(person.text(0) == "BART LTD");
    CHECK(person.text(1) == "193\xEF\xBF\xBD");

    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(person.focus()->objectName() == "accessionNumber");
    person.type("SHT.1956.7");
    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(person.message().contains("SHT.1956.7"));

    person.key(Qt::Key_F12);
    REQUIRE(person.focus()->objectName() == "searchWords");
    person.type("BART");
    person.key(Qt::Key_Return);
    auto pane = person.window().findChild<gui::ArchivePane*>();
    REQUIRE(pane->model().rowCount() == 1);
    CHECK(pane->model().item(0)->accession_number == "SHT.1956.7");

    const auto record = person.sitting().look("SHT.1956.7");
    REQUIRE(record);
    REQUIRE(record->stamps.size() == 1);
    const auto& readings = record->stamps[0].views.at(0).readings;
    REQUIRE(readings.size() == 2);
    CHECK(readings[0].reading.reader == "fake-reader 1");
    const models::Reading& own = readings[1].reading;
    CHECK(own.reader == "Maud Pell");
    CHECK(own.basis == models::Basis::Photo);
    CHECK(own.candidates_were_shown == false);
    CHECK(own.lines[0].cells[0].by == "Maud Pell");
    CHECK(own.lines[0].cells[1].by == "fake-reader");  // untouched: still the engine's
    CHECK(own.lines[1].cells[3].state == models::CellState::Traces);

    // Opened from the archive it shows the photo, the stamp and the person's letters.
    REQUIRE(person.focus()->objectName() == "foundTable");
    person.key(Qt::Key_Return);
    REQUIRE(person.waitFor([&] {
        return person.sitting().session() != nullptr && person.sitting().record() != nullptr;
    }));
    CHECK(person.sitting().record()->item.accession_number == "SHT.1956.7");
    CHECK(person.text(0) == "BART LTD");
    CHECK(person.session().photo().sha256 == record->photos.at(0).sha256);
}

TEST_CASE("A record that was opened again takes a correction beside what was filed",
          "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    person.type("B");
    person.key(Qt::Key_S, Qt::ControlModifier);
    person.type("SHT.2");
    person.key(Qt::Key_S, Qt::ControlModifier);
    const auto before = person.sitting().look("SHT.2");
    REQUIRE(before);
    person.restart();

    person.sitting().openRecord(*before);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.text(0) == "BART LTD");
    CHECK(person.sitting().unfiled().empty());
    person.key(Qt::Key_Home);
    person.type("C");
    CHECK(person.sitting().unfiled().size() == 1);
    person.sitting().fileRecord("grey");

    const auto after = person.sitting().look("SHT.2");
    REQUIRE(after->stamps.size() == 1);
    const auto& readings = after->stamps[0].views[0].readings;
    REQUIRE(readings.size() == before->stamps[0].views[0].readings.size() + 1);
    const auto corrected = std::find_if(readings.begin(), readings.end(), [&](const auto& record) {
        return models::plainText(record.reading.lines[0]) == "CART LTD";
    });
    REQUIRE(corrected != readings.end());
    CHECK(corrected->supersedes == before->stamps[0].views[0].readings.back().id);
    CHECK(corrected->reading.layer == "grey");
    CHECK(person.sitting().unfiled().empty());
}

TEST_CASE("Undo and redo go back and forth through letters", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    const models::Reading proposal = person.session().stamp()->shown;
    person.type("BE");
    person.key(Qt::Key_Delete);
    CHECK(person.text(0) == "BET LTD");
    person.key(Qt::Key_Z, Qt::ControlModifier, 3);
    CHECK(person.session().stamp()->shown == proposal);
    CHECK(person.session().editor().place() == gui::CellPlace{0, 0});
    person.key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    person.key(Qt::Key_Y, Qt::ControlModifier);
    CHECK(person.text(0) == "BERT LTD");
}

TEST_CASE("Letters, digits and quoted signs always type text", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_L, Qt::ControlModifier);  // a new line
    person.type("AB3/4.&- X");
    CHECK(person.text(1) == "AB3/4.&- X");
    person.type("\\?\\+^");
    CHECK(person.text(1) == "AB3/4.&- X?+\xE2\x86\x91");
}

TEST_CASE("Candidates stay folded until the letters have been gone through", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    auto tray = person.window().findChild<gui::Tray*>();
    auto candidates = person.window().findChild<gui::CandidateList*>();
    CHECK(tray->isClosed());
    person.key(Qt::Key_Return, Qt::NoModifier, 10);  // eight letters and two digits
    CHECK(tray->isClosed());
    CHECK(person.script().rankings == 0);
    person.key(Qt::Key_Return, Qt::NoModifier, 2);
    REQUIRE(tray->isOpen(gui::TrayPage::Meaning));
    CHECK(person.focus()->objectName() == "stampView");  // the hand stays where it was
    REQUIRE(person.waitFor([&] { return candidates->model().rowCount() == 3; }));
    CHECK(candidates->model().candidate(0)->maker_id == "hart");

    person.session().setFields({});
    person.sitting().fileRecord({});
    const auto found = person.sitting().find({});
    REQUIRE(found.size() == 1);
    const auto record = person.sitting().look(found[0].id);
    CHECK(record->stamps[0].views[0].readings.back().reading.candidates_were_shown == false);
}

TEST_CASE("Taking out the last unseen cell ends the way through the letters too",
          "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_Return, Qt::ShiftModifier);
    person.key(Qt::Key_Return, Qt::NoModifier, 3);
    auto tray = person.window().findChild<gui::Tray*>();
    CHECK(tray->isClosed());
    person.key(Qt::Key_Delete);
    CHECK(tray->isOpen(gui::TrayPage::Meaning));
}

TEST_CASE("A key unfolds the candidates sooner, and that is recorded", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    auto candidates = person.window().findChild<gui::CandidateList*>();
    person.key(Qt::Key_F11);
    REQUIRE(person.waitFor([&] { return candidates->model().rowCount() == 3; }));
    CHECK(person.focus()->objectName() == "candidateTable");
    person.key(Qt::Key_Escape);
    person.type("H");
    CHECK(person.session().stamp()->looked_ahead);
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.session().stamp()->looked_ahead);  // it cannot be unseen
    person.type("H");
    person.sitting().fileRecord({});
    const auto record = person.sitting().look(person.sitting().find({}).at(0).id);
    CHECK(record->stamps[0].views[0].readings.back().reading.candidates_were_shown == true);
}

TEST_CASE("That candidates were seen is not undone with an outline", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_F9);
    person.key(Qt::Key_Right);  // a corner
    REQUIRE(person.waitFor(
        [&] { return person.script().stamps_examined == 1 && !person.sitting().isBusy(); }));
    person.key(Qt::Key_F11);
    CHECK(person.session().stamp()->looked_ahead);
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.session().stamp()->looked_ahead);
}

TEST_CASE("Unfolded candidates follow the letters", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    auto candidates = person.window().findChild<gui::CandidateList*>();
    person.key(Qt::Key_F11);
    REQUIRE(person.waitFor([&] { return candidates->model().rowCount() == 3; }));
    CHECK(candidates->model().candidate(0)->maker_id == "hart");
    person.window().findChild<QWidget*>("stampView")->setFocus();
    person.type("M");
    REQUIRE(person.waitFor([&] { return candidates->model().candidate(0)->maker_id == "marrow"; }));
    CHECK(person.session().stamp()->read_in_view);
}

TEST_CASE("Saying what the item is ranks the candidates anew", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_F11);
    REQUIRE(person.waitFor([&] { return person.script().rankings >= 1; }));
    person.key(Qt::Key_Return);
    person.window().findChild<QWidget*>("itemType")->setFocus();
    person.key(Qt::Key_Down);
    CHECK(person.waitFor([&] {
        const std::lock_guard lock(person.script().guard);
        return person.script().types_ranked.back() == "belt-1937";
    }));
    CHECK(person.session().fields().type_id == "belt-1937");
}

TEST_CASE("Taking a candidate proposes its date and files its maker", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    auto candidates = person.window().findChild<gui::CandidateList*>();
    person.key(Qt::Key_F11);
    REQUIRE(person.waitFor([&] { return candidates->model().rowCount() == 3; }));
    person.key(Qt::Key_Return);
    CHECK(person.focus()->objectName() == "certainty");
    auto date = person.window().findChild<QLineEdit*>("date");
    CHECK(date->text() == "1938");
    person.window().findChild<QLineEdit*>("accessionNumber")->setFocus();
    person.type("SHT.9");
    date->setFocus();
    date->selectAll();
    person.type("about 1938");
    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK_FALSE(person.sitting().look("SHT.9"));  // not EDTF: refused, nothing lost
    CHECK(person.window()
              .findChild<QLabel*>("filingTrouble")
              ->text()
              .contains("EDTF: at character "));
    date->selectAll();
    person.type("1938?");
    person.key(Qt::Key_S, Qt::ControlModifier);
    const auto record = person.sitting().look("SHT.9");
    REQUIRE(record);
    REQUIRE(record->attributions.size() == 1);
    CHECK(record->attributions[0].maker_id == "hart");
    CHECK(record->attributions[0].maker_name == "Hart Ltd");
    CHECK(record->attributions[0].date_edtf == "1938?");
    CHECK(record->attributions[0].certainty == models::Certainty::Possible);
    CHECK(record->attributions[0].engine_reasons == "the letters fit the mark HART LTD");
}
