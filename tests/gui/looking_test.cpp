// What is looked at closer, and how letters are written.
#include <QLabel>
#include <QMouseEvent>
#include <QPlainTextEdit>
#include <QToolButton>
#include <catch2/catch.hpp>

#include "app/gui/cell_strip.h"
#include "app/gui/letter_keys.h"
#include "app/gui/look.h"
#include "app/gui/magnifier.h"
#include "app/gui/stamp_view.h"
#include "tests/gui/window_harness.h"

using gui_tests::WindowHarness;

namespace {

void moveMouse(QWidget& over, const QPointF& to)
{
    QMouseEvent move(QEvent::MouseMove, to, over.mapToGlobal(to), Qt::NoButton, Qt::NoButton,
                     Qt::NoModifier);
    QApplication::sendEvent(&over, &move);
}

}  // namespace

TEST_CASE("The magnifier lies over everything, shows the letter in hand and follows the mouse",
          "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    auto view = person.window().findChild<gui::StampView*>();
    CHECK_FALSE(person.window().findChild<gui::Magnifier*>());
    person.key(Qt::Key_G, Qt::ControlModifier);
    auto magnifier = person.window().findChild<gui::Magnifier*>();
    REQUIRE(magnifier);
    CHECK(magnifier->isVisible());
    // Nothing of the stamp or of its cells can be painted over what lies beside all of them, last.
    CHECK(magnifier->parentWidget() == person.window().centralWidget());
    const auto layers =
        magnifier->parentWidget()->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly);
    CHECK(layers.indexOf(magnifier) == layers.size() - 1);
    CHECK(magnifier->parentWidget()->rect().contains(magnifier->geometry()));
    CHECK(magnifier->height() >= 280);

    const QRectF first = magnifier->part();
    person.key(Qt::Key_Right);
    const QRectF second = magnifier->part();
    CHECK(second.left() > first.left());
    QWidget* sheet = view->widget();
    const QRectF picture = view->sheet().bands[1].picture;
    moveMouse(*sheet, picture.center());
    const double scale = view->sheet().scale;
    CHECK(magnifier->part().center().x() ==
          Approx((picture.center().x() - view->sheet().left) / scale));
    const QRectF cell = view->sheet().bands[1].cells[0];
    moveMouse(*sheet, cell.center());
    CHECK(magnifier->part().left() < magnifier->part().right());
    QEvent leave(QEvent::Leave);
    QApplication::sendEvent(sheet, &leave);
    CHECK(magnifier->part() == second);

    person.key(Qt::Key_T, Qt::ControlModifier);  // a low view
    CHECK(magnifier->isVisible());
    CHECK(magnifier->height() >= 280);
    person.key(Qt::Key_G, Qt::ControlModifier);
    CHECK_FALSE(magnifier->isVisible());
}

TEST_CASE("Letters typed small are capitals until a key says as typed, which is remembered",
          "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    auto told = person.window().findChild<QLabel*>("letterCase");
    CHECK(told->isVisible());
    CHECK(told->text() == "capitals");
    person.type("bert");
    CHECK(person.text() == "BERT LTD");
    person.key(Qt::Key_Home);
    person.type("\\b");  // the next character as it is
    CHECK(person.text() == "bERT LTD");

    person.key(Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(told->text().contains("as typed"));
    person.key(Qt::Key_Home);
    person.type("bo");
    CHECK(person.text() == "boRT LTD");
    QTest::qWait(300);  // until that is kept
    person.restart();
    person.window().restoreTable();
    CHECK(person.window().findChild<QLabel*>("letterCase")->text().contains("as typed"));
}

TEST_CASE("Only a letter that has a capital of its own becomes one", "[app][gui][keys]")
{
    CHECK(gui::asCapitals("a") == "A");
    CHECK(gui::asCapitals(QString::fromUtf8("ö")) == QString::fromUtf8("Ö"));
    for (const char* as_it_is : {"7", "&", "ß", "µ", "Q"})
        CHECK(gui::asCapitals(QString::fromUtf8(as_it_is)) == QString::fromUtf8(as_it_is));
}

TEST_CASE("A layer that the stamp has not is said to be none", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    const auto buttons = person.window().findChildren<QToolButton*>(QRegularExpression("^layer"));
    person.key(Qt::Key_F8);
    const QString told = person.window().findChild<QLabel*>("cellLine")->text();
    CHECK(told.contains("no such layer"));
    CHECK(told.contains(QString("F%1").arg(buttons.size() + 1)));
}

TEST_CASE("In a narrow window every key of a layer stays whole", "[app][gui][window]")
{
    WindowHarness person;
    person.openDrawn();
    for (const int width : {1400, 800, 640}) {
        person.window().resize(width, 500);
        QTest::qWait(20);
        for (const QToolButton* button :
             person.window().findChildren<QToolButton*>(QRegularExpression("^layer"))) {
            CAPTURE(width, button->text().toStdString());
            CHECK(button->width() >= button->sizeHint().width());
            CHECK(button->mapTo(&person.window(), button->rect().bottomRight()).x() < width);
            CHECK(button->text().startsWith("F"));
        }
    }
}

TEST_CASE("Where another part of a line begins there is an edge to see", "[app][gui][roles]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_Right, Qt::NoModifier, 5);
    const gui::CellStrip* strip = person.window().findChild<gui::StampView*>()->strips()[0];
    const auto inked = [&] {
        const double edge = (strip->cellRects()[4].right() + strip->cellRects()[5].left()) / 2;
        const QImage seen = const_cast<gui::CellStrip*>(strip)->grab().toImage();
        const QColor mark = gui::coloursIn(strip->palette()).mark;
        const double ratio = seen.devicePixelRatio();
        int count = 0;
        for (int y = 0; y < seen.height(); ++y)
            for (int x = -1; x <= 1; ++x)
                if (seen.pixelColor(static_cast<int>(edge * ratio) + x, y) == mark) {
                    ++count;
                    break;
                }
        return 1.0 * count / seen.height();
    };
    CHECK(inked() < 0.3);
    person.key(Qt::Key_B, Qt::ControlModifier);
    CHECK(inked() > 0.8);
    person.key(Qt::Key_B, Qt::ControlModifier);
    CHECK(inked() < 0.3);
}

TEST_CASE("What is typed into the notation is undone word by word, and after a pause",
          "[app][gui][typed]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_T, Qt::ControlModifier);
    person.key(Qt::Key_End, Qt::ControlModifier);
    person.type(" AB CD");
    REQUIRE(person.text(1) == "1938 AB CD");
    QTest::qWait(1100);
    person.type("E");
    REQUIRE(person.text(1) == "1938 AB CDE");
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.text(1) == "1938 AB CD");
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.text(1).rfind("1938 AB", 0) == 0);
    CHECK(person.text(1).find("CD") == std::string::npos);
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.text(1).find("AB") == std::string::npos);
    person.key(Qt::Key_Y, Qt::ControlModifier, 3);
    CHECK(person.text(1) == "1938 AB CDE");
}
