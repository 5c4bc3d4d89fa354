// The table: folders, reading ahead, undo over everything.
#include <QLineEdit>
#include <QPlainTextEdit>
#include <catch2/catch.hpp>

#include "app/gui/candidate_list.h"
#include "app/gui/stamp_view.h"
#include "app/gui/year_bars.h"
#include "tests/gui/window_harness.h"

using gui::PhotoState;
using gui_tests::WindowHarness;

TEST_CASE("A folder is laid out photo by photo, and read ahead one at a time",
          "[app][gui][window][ahead]")
{
    WindowHarness person(std::make_shared<gui_tests::FakeScript>(), gui_tests::readAhead);
    person.open({gui_tests::drawFolder(person.folder(), 5)});
    gui::PhotoQueue& queue = *person.sitting().queue();
    REQUIRE(queue.rowCount() == 5);
    REQUIRE(person.waitFor([&] {
        for (int i = 0; i < 5; ++i)
            if (queue.state(i) != PhotoState::Read)
                return false;
        return true;
    }));
    CHECK(person.script().photos_examined == 5);
    for (int i = 0; i < 5; ++i)
        CHECK_FALSE(queue.data(queue.index(i), Qt::DecorationRole).isNull());
    // What was read ahead is not read again.
    person.key(Qt::Key_N, Qt::ControlModifier);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.sitting().place() == 1);
    CHECK(person.text() == "HART LTD");
    person.sitting().goTo(4);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.text() == "HART LTD");
    CHECK(person.script().photos_examined == 5);
}

TEST_CASE("Reading ahead is paused and goes on by key, and never makes a person wait",
          "[app][gui][window][ahead]")
{
    WindowHarness person(std::make_shared<gui_tests::FakeScript>(), gui_tests::readAhead);
    person.script().hold = true;
    person.window().openPhotos({gui_tests::drawFolder(person.folder(), 3)});
    REQUIRE(person.waitFor([&] { return person.script().photos_examined == 1; }));
    person.script().hold = false;
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    person.script().hold = true;
    person.key(Qt::Key_P, Qt::ControlModifier);  // paused: what runs is given up
    person.key(Qt::Key_P, Qt::ControlModifier);
    REQUIRE(person.waitFor([&] { return person.script().photos_examined >= 2; }));
    person.sitting().goTo(2);  // another than the one being read ahead
    person.script().hold = false;
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.session().photo().file.filename() == "photo2.png");
}

TEST_CASE("The next photo that is not filed is one key away, round the end", "[app][gui][window]")
{
    WindowHarness person;
    person.open({gui_tests::drawFolder(person.folder(), 3)});
    person.sitting().goTo(1);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    person.type("B");
    person.key(Qt::Key_S, Qt::ControlModifier, 2);
    CHECK(person.sitting().queue()->state(1) == PhotoState::Filed);
    person.key(Qt::Key_N, Qt::ControlModifier);
    CHECK(person.sitting().place() == 2);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    person.key(Qt::Key_N, Qt::ControlModifier);
    CHECK(person.sitting().place() == 0);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    person.key(Qt::Key_N, Qt::ControlModifier);
    CHECK(person.sitting().place() == 2);  // 1 is filed
}

TEST_CASE("What is said of the piece is undone and done again with the letters",
          "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    person.type("B");
    person.key(Qt::Key_S, Qt::ControlModifier);
    person.type("SHT.5");
    auto number = person.window().findChild<QLineEdit*>("accessionNumber");
    REQUIRE(number->text() == "SHT.5");
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(number->text().isEmpty());
    CHECK(person.text() == "BART LTD");
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.text() == "HART LTD");
    person.key(Qt::Key_Y, Qt::ControlModifier, 2);
    CHECK(number->text() == "SHT.5");
    CHECK(person.text() == "BART LTD");
}

TEST_CASE("None of the known makers is concluded by one key, and recorded", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_Backspace, Qt::AltModifier);
    CHECK(person.focus()->objectName() == "accessionNumber");
    person.type("SHT.6");
    person.key(Qt::Key_S, Qt::ControlModifier);
    const auto record = person.sitting().look("SHT.6");
    REQUIRE(record);
    REQUIRE(record->attributions.size() == 1);
    CHECK(record->attributions[0].maker_id.empty());
    CHECK(record->attributions[0].maker_name == "none of the known makers");
}

TEST_CASE("Left open, nothing is concluded and no letter is changed", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    const models::Reading before = person.session().stamp()->shown;
    person.key(Qt::Key_F11);
    auto list = person.window().findChild<gui::CandidateList*>();
    REQUIRE(person.waitFor([&] { return list->model().rowCount() == 3; }));
    person.key(Qt::Key_Return, Qt::AltModifier);
    CHECK(person.session().fields().maker_id == "hart");
    person.key(Qt::Key_Delete, Qt::AltModifier);
    CHECK(person.session().fields().maker_id.empty());
    CHECK(person.session().stamp()->shown == before);
    person.type("SHT.7");
    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(person.sitting().look("SHT.7")->attributions.empty());
}

TEST_CASE("The share of an unknown maker is in view, and the years have their bars",
          "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_F11);
    auto list = person.window().findChild<gui::CandidateList*>();
    REQUIRE(person.waitFor([&] { return list->model().rowCount() == 3; }));
    auto unknown = person.window().findChild<gui::ShareBar*>("unknownShare");
    CHECK(unknown->isVisible());
    CHECK(unknown->accessibleDescription() == "5 %");  // what the fake ranking leaves over
    CHECK(person.window()
              .findChild<gui::CandidateList*>()
              ->findChild<gui::YearBars*>()
              ->accessibleDescription() == "1938: more than 99 %");
}

TEST_CASE("Lost letters are restored from the maker in hand by one key, and it is undone",
          "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_End);
    person.key(Qt::Key_Left);
    person.type("[");
    REQUIRE(person.session().stamp()->shown.lines[0].cells[7].state == models::CellState::Lost);
    person.key(Qt::Key_F11);
    auto list = person.window().findChild<gui::CandidateList*>();
    REQUIRE(person.waitFor([&] { return list->model().rowCount() == 3; }));
    REQUIRE(list->inHand()->mark == "HART LTD");
    person.key(Qt::Key_Insert, Qt::AltModifier);
    CHECK(person.text() == "HART LTD");
    CHECK(person.session().stamp()->shown.lines[0].cells[7].state == models::CellState::Restored);
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.session().stamp()->shown.lines[0].cells[7].state == models::CellState::Lost);
}

TEST_CASE("The reading is edited as text; a fault leaves the cells alone", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_T, Qt::ControlModifier);
    REQUIRE(person.focus()->objectName() == "typedText");
    auto text = person.window().findChild<QPlainTextEdit*>("typedText");
    CHECK(text->toPlainText() == "HART LTD\n1938");
    person.key(Qt::Key_End, Qt::ControlModifier);
    person.key(Qt::Key_Backspace);
    person.type("[");
    CHECK(person.text(1) == "193");
    person.type(".]");
    CHECK(person.session().stamp()->shown.lines[1].cells[3].state == models::CellState::Lost);
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.text(1) == "1938");
}

TEST_CASE("F2 held shows the photo as it is and comes back; a short press stays",
          "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    auto view = person.window().findChild<gui::StampView*>();
    QImage plain = view->grab().toImage();
    person.waitFor([&] {  // until the window stands still
        QTest::qWait(100);
        return std::exchange(plain, view->grab().toImage()) == plain;
    });
    person.key(Qt::Key_F4);
    person.key(Qt::Key_Up, Qt::ControlModifier | Qt::ShiftModifier);
    const QImage layer = view->grab().toImage();
    REQUIRE(layer != plain);
    QTest::keyPress(person.focus(), Qt::Key_F2);
    QTest::qWait(350);
    CHECK(view->grab().toImage() == plain);
    QTest::keyRelease(person.focus(), Qt::Key_F2);
    CHECK(view->grab().toImage() == layer);
    QTest::keyClick(person.focus(), Qt::Key_F2);
    CHECK(view->grab().toImage() != layer);
}

TEST_CASE("Nearer, the point under the mouse stays and cells stand under their letters",
          "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    auto view = person.window().findChild<gui::StampView*>();
    const double scale = view->sheet().scale;
    QWidget* sheet = view->widget();
    const QPointF held(400, 60);
    const double source = (held.x() - sheet->x() - view->sheet().left) / scale;
    view->zoom(2, held - sheet->pos());
    CHECK(view->sheet().scale == Approx(2 * scale).epsilon(0.05));  // less a scroll bar
    // Within a pixel: the scroll bars have whole ones.
    CHECK(sheet->x() + view->sheet().left + source * view->sheet().scale ==
          Approx(held.x()).margin(1));
    const models::Cell& cell = person.session().stamp()->shown.lines[0].cells[4];
    CHECK(view->sheet().bands[0].cells[4].center().x() ==
          Approx(view->sheet().left + (cell.left_px + cell.right_px) / 2 * view->sheet().scale)
              .margin(1));
    person.key(Qt::Key_0, Qt::ControlModifier);
    CHECK(view->sheet().scale == Approx(scale));
}

TEST_CASE("A stamp is turned over by key, and stays as the person turned it", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    const auto before = person.session().stamp()->outline.corners;
    person.key(Qt::Key_U, Qt::ControlModifier);
    CHECK(person.session().stamp()->outline.corners[0] == before[2]);
    CHECK(person.session().stamp()->turned);
    REQUIRE(person.waitFor([&] { return person.script().stamps_examined == 1; }));
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.session().stamp()->outline.corners == before);
}
