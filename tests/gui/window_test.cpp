#include <QAbstractButton>
#include <QApplication>
#include <QDropEvent>
#include <QImage>
#include <QMimeData>
#include <catch2/catch.hpp>
#include <thread>

#include "app/gui/cell_strip.h"
#include "app/gui/cell_words.h"
#include "app/gui/help_overlay.h"
#include "app/gui/look.h"
#include "app/gui/stamp_view.h"
#include "tests/gui/window_harness.h"

using gui_tests::WindowHarness;

TEST_CASE("A photo that cannot be read is a sentence in the window, and the next one opens",
          "[app][gui][window]")
{
    WindowHarness person;
    const auto bad = gui_tests::writeLetter(person.folder());
    const auto good = gui_tests::drawPhoto(person.folder(), "strap.png");
    person.open({bad, good});
    REQUIRE(person.waitFor([&] { return !person.message().isEmpty(); }));
    CHECK(person.message().contains("letter.jpg"));
    CHECK(person.sitting().queue()->state(0) == gui::PhotoState::Unreadable);
    person.key(Qt::Key_PageDown, Qt::ControlModifier);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.text() == "HART LTD");
}

TEST_CASE("Escape stops a reading, and opening the photo again reads it", "[app][gui][window]")
{
    WindowHarness person;
    person.script().hold = true;
    person.window().openPhotos({gui_tests::drawPhoto(person.folder(), "strap.png")});
    REQUIRE(person.waitFor([&] { return person.script().photos_examined == 1; }));
    CHECK(person.window().findChild<QWidget*>("stopButton")->isVisible());
    person.key(Qt::Key_Escape);
    REQUIRE(person.waitFor([&] { return !person.sitting().isBusy(); }));
    CHECK(person.script().stopped == 1);
    CHECK(person.message().contains("stopped"));
    CHECK(person.sitting().session() == nullptr);
    CHECK_FALSE(person.window().findChild<QWidget*>("stopButton")->isVisible());

    person.script().hold = false;
    person.key(Qt::Key_R, Qt::ControlModifier);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.text() == "HART LTD");
}

TEST_CASE("Photos opened one upon the other end at the last", "[app][gui][window]")
{
    WindowHarness person;
    std::vector<std::filesystem::path> photos;
    for (int i = 0; i < 6; ++i)
        photos.push_back(
            gui_tests::drawPhoto(person.folder(), "photo" + std::to_string(i) + ".png"));
    person.window().openPhotos(photos);
    for (int round = 0; round < 40; ++round)
        person.sitting().goTo(round * 5 % 6);
    person.sitting().goTo(3);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.session().photo().file == photos[3]);
    for (int i = 0; i < 6; ++i)
        CHECK(person.sitting().queue()->state(i) !=
              (i == 3 ? gui::PhotoState::ToRead : gui::PhotoState::Reading));
}

TEST_CASE("What was on its way when another photo was opened is not taken for that one",
          "[app][gui][window]")
{
    WindowHarness person;
    const auto first = gui_tests::drawPhoto(person.folder(), "first.png");
    const auto second = gui_tests::drawPhoto(person.folder(), "second.png");
    person.window().openPhotos({first, second});
    while (person.script().photos_done < 1)  // without taking the news in
        std::this_thread::sleep_for(std::chrono::milliseconds(2));
    std::this_thread::sleep_for(std::chrono::milliseconds(100));
    person.script().hold = true;
    person.sitting().goTo(1);
    QTest::qWait(100);
    CHECK(person.sitting().session() == nullptr);
    person.script().hold = false;
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.session().photo().file == second);
}

TEST_CASE("The window closes while the worker is at work", "[app][gui][window]")
{
    auto script = std::make_shared<gui_tests::FakeScript>();
    {
        WindowHarness person(script);
        script->hold = true;
        person.window().openPhotos({gui_tests::drawPhoto(person.folder(), "strap.png")});
        REQUIRE(person.waitFor([&] { return script->photos_examined == 1; }));
        person.window().close();
    }
    CHECK(script->stopped == 1);
}

TEST_CASE("Engines that cannot be loaded are a sentence, not an end", "[app][gui][window]")
{
    WindowHarness person([]() -> gui::Examiner {
        throw models::RegisterError({{"makers.csv", 4, "from", "the year is not EDTF", "mend it"}});
    });
    REQUIRE(person.waitFor([&] { return person.message().contains("makers.csv"); }));
}

TEST_CASE("In the window the cells stand under their letters, at any size", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    auto view = person.window().findChild<gui::StampView*>();
    for (const QSize size : {QSize(1000, 700), QSize(1600, 900), QSize(700, 500)}) {
        person.window().resize(size);
        QTest::qWait(20);
        CAPTURE(size.width(), view->sheet().scale);
        REQUIRE(view->strips().size() == 2);
        for (std::size_t line = 0; line < 2; ++line) {
            const models::Line& shown = person.session().stamp()->shown.lines[line];
            const auto& rects = view->strips()[line]->cellRects();
            REQUIRE(rects.size() == shown.cells.size());
            for (std::size_t i = 0; i < rects.size(); ++i) {
                const double middle = (shown.cells[i].left_px + shown.cells[i].right_px) / 2;
                // A pixel: strips are placed on whole pixels.
                CHECK(view->strips()[line]->x() + rects[i].center().x() ==
                      Approx(view->sheet().left + middle * view->sheet().scale).margin(1));
            }
            const QRectF& picture = view->sheet().bands[line].picture;
            CHECK(view->strips()[line]->y() == Approx(picture.bottom()).margin(1));
        }
    }
}

TEST_CASE("Photos dropped on the window are opened", "[app][gui][window]")
{
    WindowHarness person;
    const auto photo = gui_tests::drawPhoto(person.folder(), "dropped.png");
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(QString::fromStdString(photo.string()))});
    QDragEnterEvent enter({50, 50}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&person.window(), &enter);
    CHECK(enter.isAccepted());
    QDropEvent drop({50, 50}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&person.window(), &drop);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.session().photo().file == photo);
}

TEST_CASE("Layers flip in place by function keys", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    auto view = person.window().findChild<gui::StampView*>();
    const auto grab = [&] { return view->grab().toImage(); };
    const QImage colours = grab();
    const double scale = view->sheet().scale;
    person.key(Qt::Key_F4);
    const QImage even = grab();
    CHECK(even != colours);
    CHECK(view->sheet().scale == scale);
    person.key(Qt::Key_F8);  // there is no such layer: nothing happens
    CHECK(grab() == even);
    person.key(Qt::Key_F2);
    CHECK(grab() == colours);
}

TEST_CASE("F1 shows every key, any key leads back to the letters", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_F1);
    auto help = person.window().findChild<gui::HelpOverlay*>();
    REQUIRE(help->isVisible());
    CHECK(help->accessibleDescription().contains("restored"));
    person.key(Qt::Key_F1);
    CHECK_FALSE(help->isVisible());
    CHECK(person.focus()->objectName() == "stampView");
}

TEST_CASE("In a small window the page of keys is gone through by PgDn to its end",
          "[app][gui][window]")
{
    WindowHarness person;
    person.window().resize(640, 480);
    person.openDrawn();
    person.key(Qt::Key_F1);
    auto help = person.window().findChild<gui::HelpOverlay*>();
    QImage last = help->grab().toImage();
    int pages = 1;
    constexpr int most_pages = 20;
    for (; pages < most_pages; ++pages) {
        person.key(Qt::Key_PageDown);
        REQUIRE(help->isVisible());
        const QImage next = help->grab().toImage();
        if (next == last)
            break;
        last = next;
    }
    CHECK(pages > 1);
    CHECK(pages < most_pages);
    person.key(Qt::Key_F1);
    CHECK_FALSE(help->isVisible());
}

TEST_CASE("A state is told by a sign and a word, each its own", "[app][gui][words]")
{
    std::vector<models::Cell> cells(5, models::clearCell("R"));
    cells[1].state = models::CellState::Doubtful;
    cells[2].state = models::CellState::Traces;
    cells[2].alternatives.clear();
    cells[3].state = models::CellState::Lost;
    cells[3].alternatives.clear();
    cells[4].state = models::CellState::Restored;
    QStringList faces, words;
    for (const models::Cell& cell : cells) {
        faces << gui::cellFace(cell);
        words << gui::stateWord(cell);
    }
    CHECK(words == QStringList{"clear", "unsure", "faint", "lost", "restored"});
    CHECK(faces == QStringList{"R", QString("R") + QChar(0x323), "+", "[.]", "[R]"});
    cells[3].least = 0;
    cells[3].most.reset();
    CHECK(gui::cellFace(cells[3]) == "[- - -]");
    cells[4].alternatives = {{".", 1}};
    CHECK(gui::cellFace(cells[4]) != "[.]");  // that is a lost letter
    cells[1].by = "line-reader";
    CHECK_FALSE(gui::cellSentence(cells[1], "Maud Pell").contains("line-reader"));
    cells[0].by = "tesseract";
    cells[0].alternatives = {{"R", 0.83}, {"B", 0.1}};
    CHECK(gui::cellSentence(cells[0], "Maud Pell") ==
          "R, clear, seen by the engine (83 %); or B 10 %");
    cells[0].by = "Maud Pell";
    CHECK(gui::cellSentence(cells[0], "Maud Pell").contains("confirmed by you"));
}

TEST_CASE("Text can be read on every ground, by day and by dusk", "[app][gui][look]")
{
    // 4.5 and 3 are the least contrasts of text and of signs in WCAG 2.1 (1.4.3, 1.4.11).
    for (const gui::Light light : {gui::Light::Day, gui::Light::Dusk}) {
        const gui::Colours c = gui::coloursOf(light);
        for (const QColor& ground : {c.ground, c.sheet, c.table}) {
            CHECK(gui::contrast(c.ink, ground) >= 4.5);
            CHECK(gui::contrast(c.quiet, ground) >= 3);
            CHECK(gui::contrast(c.hand, ground) >= 3);
        }
        for (const QColor& ground : {c.ground, c.sheet}) {  // words are written in these too
            CHECK(gui::contrast(c.mark, ground) >= 4.5);
            CHECK(gui::contrast(c.hand, ground) >= 4.5);
        }
        CHECK(gui::contrast(c.quiet, c.ground) >= 4.5);
        CHECK(gui::contrast(c.quiet, c.sheet) >= 4.5);
        CHECK(gui::contrast(c.on_mark, c.mark) >= 4.5);
        CHECK(gui::contrast(c.alarm, c.sheet) >= 4.5);
    }
    // Known pair: black on white is 21 (WCAG 2.1, definition of contrast ratio).
    CHECK(gui::contrast(Qt::black, Qt::white) == Approx(21));
}

TEST_CASE("Everything that takes the focus has a name for those who listen", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    for (QWidget* widget : person.window().findChildren<QWidget*>()) {
        const bool own = !widget->objectName().startsWith("qt_") && !widget->objectName().isEmpty();
        if (!own || widget->focusPolicy() == Qt::NoFocus || widget->focusProxy())
            continue;
        CAPTURE(widget->objectName().toStdString());
        auto button = qobject_cast<QAbstractButton*>(widget);
        CHECK_FALSE((widget->accessibleName() + (button ? button->text() : QString())).isEmpty());
    }
}
