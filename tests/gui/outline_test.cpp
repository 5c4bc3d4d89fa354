#include "app/gui/outline_edits.h"

#include <QElapsedTimer>
#include <catch2/catch.hpp>

#include "app/gui/photo_view.h"
#include "app/gui/picture.h"
#include "app/gui/tray.h"
#include "tests/gui/window_harness.h"

using gui_tests::WindowHarness;

namespace {

vision::Quad cornersOf(WindowHarness& person)
{
    return person.session().stamp()->outline.corners;
}

bool examinedAgain(WindowHarness& person, int times)
{
    return person.waitFor(
        [&] { return person.script().stamps_examined >= times && !person.sitting().isBusy(); });
}

}  // namespace

TEST_CASE("A corner moves alone, stays in the photo, and never folds the outline",
          "[app][gui][outline]")
{
    const vision::Quad box{cv::Point2f(10, 10), {90, 10}, {90, 40}, {10, 40}};
    const auto moved = gui::movedHandle(box, 1, {5, -3}, {100, 50});
    REQUIRE(moved);
    CHECK((*moved)[1] == cv::Point2f(95, 7));
    CHECK((*moved)[0] == box[0]);
    CHECK((*gui::movedHandle(box, 1, {500, 0}, {100, 50}))[1].x == 99);
    CHECK_FALSE(gui::movedHandle(box, 1, {-85, 35}, {100, 50}));
    const auto whole = gui::movedHandle(box, gui::whole_outline, {2, 3}, {100, 50});
    CHECK((*whole)[2] == cv::Point2f(92, 43));
    CHECK(gui::handleAt(box, {88, 12}, 5) == 1);
    CHECK(gui::handleAt(box, {50, 25}, 5) == gui::whole_outline);
    CHECK_FALSE(gui::handleAt(box, {50, 48}, 5));
}

TEST_CASE("Moving a corner by keys reads that stamp again, and can be undone",
          "[app][gui][outline]")
{
    WindowHarness person;
    person.openDrawn();
    const vision::Quad before = cornersOf(person);
    person.key(Qt::Key_F9);
    REQUIRE(person.focus()->objectName() == "photoView");
    person.key(Qt::Key_Return);  // the second corner
    person.key(Qt::Key_Right);
    person.key(Qt::Key_Down, Qt::ShiftModifier);
    CHECK(cornersOf(person)[1].x == before[1].x + 1);
    CHECK(cornersOf(person)[1].y == before[1].y + 10);
    REQUIRE(examinedAgain(person, 1));
    CHECK(person.script().stamps_examined == 1);  // once, after the pause
    CHECK(person.script().outlines_seen.back().corners == cornersOf(person));
    CHECK_FALSE(person.session().stamp()->stale);

    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(cornersOf(person) == before);
    person.key(Qt::Key_Y, Qt::ControlModifier);
    REQUIRE(examinedAgain(person, 2));
    CHECK(cornersOf(person)[1].y == before[1].y + 10);
}

TEST_CASE("A stamp that turns out to be upside down keeps the corner in hand",
          "[app][gui][outline]")
{
    WindowHarness person;
    person.openDrawn();
    person.script().turns_over = true;
    person.key(Qt::Key_F9);
    person.key(Qt::Key_Return);
    const auto view = person.window().findChild<gui::PhotoView*>();
    REQUIRE(view->handle() == 1);
    person.key(Qt::Key_Right);
    const cv::Point2f held = cornersOf(person)[1];
    REQUIRE(examinedAgain(person, 1));
    CHECK(view->handle() == 3);
    CHECK(cornersOf(person)[3] == held);
    person.key(Qt::Key_Right);
    CHECK(cornersOf(person)[3].x == held.x + 1);
}

TEST_CASE("A moved corner never turns over a stamp in which letters were confirmed",
          "[app][gui][outline]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_Return);  // one letter
    person.script().turns_over = true;
    const vision::Quad before = cornersOf(person);
    person.key(Qt::Key_F9);
    person.key(Qt::Key_Right, Qt::ShiftModifier);
    REQUIRE(examinedAgain(person, 1));
    CHECK(cornersOf(person)[2] == before[2]);
    CHECK(person.window().findChild<gui::PhotoView*>()->handle() == 0);
}

TEST_CASE("Letters the person confirmed outlive a new examination and stay under their letters",
          "[app][gui][outline]")
{
    WindowHarness person;
    person.openDrawn();
    person.type("B");
    const double left = person.session().stamp()->shown.lines[0].cells[0].left_px;
    person.key(Qt::Key_F9);
    person.key(Qt::Key_Left, Qt::ShiftModifier);  // the top left corner, 10 px outwards
    REQUIRE(examinedAgain(person, 1));
    CHECK(person.text() == "BART LTD");
    CHECK(person.session().stamp()->shown.lines[0].cells[0].by == "Maud Pell");
    // The rectified picture now begins 10 px farther left.
    CHECK(person.session().stamp()->shown.lines[0].cells[0].left_px == Approx(left + 10));
}

TEST_CASE("The mouse moves a corner; the stamp is read when it is let go", "[app][gui][outline]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_F9);
    QTest::qWait(20);
    auto view = person.window().findChild<gui::PhotoView*>();
    const vision::Quad before = cornersOf(person);
    const QPoint from = view->viewFromPhoto({before[2].x, before[2].y}).toPoint();
    const QPoint to = from + QPoint(20, 10);
    QTest::mousePress(view, Qt::LeftButton, {}, from);
    QTest::mouseMove(view, to);
    CHECK(cornersOf(person) == before);  // nothing is read while it is held
    QTest::mouseRelease(view, Qt::LeftButton, {}, to);
    REQUIRE(examinedAgain(person, 1));
    const QPointF moved = view->photoFromView(to) - view->photoFromView(from);
    CHECK(cornersOf(person)[2].x == Approx(before[2].x + moved.x()).margin(1));
    CHECK(cornersOf(person)[0] == before[0]);
}

TEST_CASE("Outlines are added and taken out by keys, undoably", "[app][gui][outline]")
{
    auto script = std::make_shared<gui_tests::FakeScript>();
    script->stamps.clear();
    WindowHarness person(script);
    person.open({gui_tests::drawPhoto(person.folder(), "bare.png", {})});
    REQUIRE(person.sitting().session());
    CHECK(person.message().contains("No stamp"));
    person.key(Qt::Key_F9);
    person.key(Qt::Key_Insert);
    REQUIRE(examinedAgain(person, 1));
    REQUIRE(person.session().stamps().size() == 1);
    CHECK(person.text() == "NEW");
    person.key(Qt::Key_Delete);
    CHECK(person.session().stamps().empty());
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.session().stamps().size() == 1);
    CHECK(person.text() == "NEW");
}

TEST_CASE("A late examination of an outline that has moved on is not taken", "[app][gui][outline]")
{
    WindowHarness person;
    person.openDrawn();
    person.script().hold = true;
    person.key(Qt::Key_F9);
    person.key(Qt::Key_Right);
    REQUIRE(person.waitFor([&] { return person.script().stamps_begun == 1; }));
    person.key(Qt::Key_Right, Qt::ShiftModifier);
    const vision::Quad last = cornersOf(person);
    REQUIRE(person.waitFor([&] { return person.script().stopped == 1; }));
    person.script().hold = false;
    REQUIRE(examinedAgain(person, 1));
    CHECK(person.script().stopped == 1);
    CHECK(person.script().outlines_seen.size() == 1);
    CHECK(person.script().outlines_seen.back().corners == last);
}

TEST_CASE("Two stamps are two places to read, each with its own folded candidates",
          "[app][gui][outline]")
{
    auto script = std::make_shared<gui_tests::FakeScript>();
    script->stamps = {{"HART"}, {"1938"}};
    WindowHarness person(script);
    person.openDrawn();
    auto tray = person.window().findChild<gui::Tray*>();
    person.key(Qt::Key_Return, Qt::ShiftModifier);
    CHECK(tray->isOpen(gui::TrayPage::Meaning));
    person.key(Qt::Key_Right, Qt::ControlModifier);
    CHECK(person.text() == "1938");
    CHECK(tray->isClosed());  // these letters have not been gone through
    person.type("5");
    person.key(Qt::Key_Left, Qt::ControlModifier);
    CHECK(person.text() == "HART");
    person.key(Qt::Key_Z, Qt::ControlModifier);  // undo goes to where the change was
    CHECK(person.session().current() == 1);
    CHECK(person.text() == "1938");
}

TEST_CASE("A 48-megapixel photo is painted without scaling all of it each time",
          "[app][gui][outline]")
{
    const cv::Mat photo(6000, 8000, CV_8UC3, cv::Scalar(90, 120, 140));
    gui::PhotoView view;
    view.resize(1000, 700);
    view.showPhoto(photo);
    const cv::Point2f a(4000, 3000), b(4400, 3000), c(4400, 3200), d(4000, 3200);
    view.showOutlines({{a, b, c, d}}, 0);
    view.show();
    view.grab();  // the reduced copy is made once
    QElapsedTimer timer;
    timer.start();
    constexpr int rounds = 10;
    for (int i = 0; i < rounds; ++i)
        gui::pictureOf(photo, {933, 700});
    const double whole_ms = static_cast<double>(timer.nsecsElapsed()) / 1e6 / rounds;
    timer.start();
    for (int i = 0; i < rounds; ++i) {
        QTest::keyClick(&view, i % 2 ? Qt::Key_0 : Qt::Key_Plus);
        view.grab();
    }
    const double painting_ms = static_cast<double>(timer.nsecsElapsed()) / 1e6 / rounds;
    CAPTURE(painting_ms, whole_ms);
    CHECK(painting_ms < whole_ms);
}

TEST_CASE("A stamp is turned as a mirror image, undone, filed and opened again as one",
          "[app][gui][outline]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_M, Qt::ControlModifier);
    REQUIRE(examinedAgain(person, 1));
    CHECK(person.text(0) == "DTL TRAH");
    CHECK(person.session().stamp()->mirrored);
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.text(0) == "HART LTD");
    CHECK_FALSE(person.session().stamp()->mirrored);
    person.key(Qt::Key_Y, Qt::ControlModifier);
    REQUIRE(examinedAgain(person, 2));
    CHECK(person.text(0) == "DTL TRAH");

    person.key(Qt::Key_Home);
    person.type("B");
    person.sitting().fileRecord("grey");
    const auto found = person.sitting().find({});
    REQUIRE(found.size() == 1);
    const auto record = person.sitting().look(found[0].id);
    for (const models::ReadingRecord& reading : record->stamps.at(0).views.at(0).readings)
        CHECK(flow::isMirrored(reading.reading));
    person.restart();
    person.sitting().openRecord(*record);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.session().stamp()->mirrored);
    CHECK(person.text(0) == "BTL TRAH");
}
