#include <QLineEdit>
#include <catch2/catch.hpp>

#include "app/gui/archive_pane.h"
#include "app/gui/candidate_list.h"
#include "app/gui/tray.h"
#include "tests/gui/window_harness.h"

using gui_tests::WindowHarness;

// The whole way with the engines of the program, on a made photograph of the demo.
TEST_CASE("A sample is opened, read by the engines, corrected, filed and found again by keyboard",
          "[app][gui][window][samples]")
{
    const std::filesystem::path source = WEFTMARK_SOURCE_DIR;
    const auto known = source / "models" / "register";
    WindowHarness person(gui::examinerOfFlow(known), known);
    person.window().openPhotos({source / "sample_images" / "easy" / "pouch_two_stamps.jpg"});
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }, 120000));
    REQUIRE_FALSE(person.session().stamps().empty());
    REQUIRE_FALSE(person.session().stamp()->shown.lines.empty());
    REQUIRE(person.session().stamp()->shown.lines[0].cells.size() > 4);

    // Two cells are made unsure, all others are right as they are.
    person.type("?");
    person.key(Qt::Key_Right);
    person.type("?");
    auto tray = person.window().findChild<gui::Tray*>();
    for (int line = 0; line < 5 && !tray->isOpen(gui::TrayPage::Meaning); ++line)
        person.key(Qt::Key_Return, Qt::ShiftModifier);
    person.key(Qt::Key_Home, Qt::ControlModifier);
    person.key(Qt::Key_Right);
    person.key(Qt::Key_Return);
    REQUIRE(tray->isOpen(gui::TrayPage::Meaning));
    auto candidates = person.window().findChild<gui::CandidateList*>();
    REQUIRE(person.waitFor([&] { return candidates->model().rowCount() > 1; }));
    person.key(Qt::Key_F11);
    REQUIRE(candidates->inHand());
    CHECK(candidates->inHand()->maker_id == "mestrelby");
    person.key(Qt::Key_Return);
    REQUIRE(person.focus()->objectName() == "certainty");
    person.key(Qt::Key_A, Qt::AltModifier);
    REQUIRE(person.focus()->objectName() == "accessionNumber");
    person.type("SHT.1956.12");
    person.key(Qt::Key_S, Qt::ControlModifier);
    INFO(person.message().toStdString());

    person.key(Qt::Key_F12);
    person.window().findChild<QLineEdit*>("searchFrom")->setText("1940");
    person.window().findChild<QLineEdit*>("searchTo")->setText("1949");
    person.type("[..]STRELBY");
    person.key(Qt::Key_Return);
    auto pane = person.window().findChild<gui::ArchivePane*>();
    REQUIRE(pane->model().rowCount() == 1);
    CHECK(pane->model().item(0)->accession_number == "SHT.1956.12");
    CHECK(pane->model().item(0)->maker_name == "Mestrelby & Eskwith");
    person.key(Qt::Key_Return);
    REQUIRE(person.waitFor([&] { return person.sitting().record() && person.sitting().session(); },
                           120000));
    const auto& cells = person.session().stamp()->shown.lines[0].cells;
    CHECK(cells[0].state == models::CellState::Doubtful);
    CHECK(cells[0].by == "Maud Pell");
}
