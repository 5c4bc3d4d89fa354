// Pieces of several photos, and views of one stamp.
#include <QApplication>
#include <QDropEvent>
#include <QLabel>
#include <QMimeData>
#include <catch2/catch.hpp>

#include "app/gui/to_read_list.h"
#include "tests/gui/window_harness.h"

using gui::PhotoState;
using gui_tests::WindowHarness;

namespace {

// Two photos on the table, both opened, the second in hand, their cards in view.
void openTwo(WindowHarness& person)
{
    person.open({gui_tests::drawFolder(person.folder(), 2)});
    person.sitting().goTo(1);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    person.key(Qt::Key_F10);
}

// Somewhere on this photo's card: on its stamp, or beside it.
std::optional<QPoint> pointOnCard(const gui::ToReadList& list, int place, bool on_stamp)
{
    const QRect card = list.visualRect(list.model()->index(place, 0));
    for (int y = card.top() + 12; y < card.bottom() - 12; ++y)
        for (int x = card.left() + 12; x < card.right() - 12; ++x)
            if (list.stampAt({x, y}).has_value() == on_stamp)
                return QPoint(x, y);
    return std::nullopt;
}

// Lays the stamp that is here on what is there.
void layStamp(gui::ToReadList& list, const QPoint& from, const QPoint& onto)
{
    const std::unique_ptr<QMimeData> carried(list.mimeOf(*list.stampAt(from)));
    QDragEnterEvent enter(onto, Qt::CopyAction, carried.get(), Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(list.viewport(), &enter);
    REQUIRE(enter.isAccepted());
    QDropEvent drop(onto, Qt::CopyAction, carried.get(), Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(list.viewport(), &drop);
}

}  // namespace

TEST_CASE("Photos put together are filed as one piece, and views as one stamp",
          "[app][gui][window][piece]")
{
    WindowHarness person;
    person.open({gui_tests::drawFolder(person.folder(), 2)});
    person.type("B");
    person.key(Qt::Key_PageDown, Qt::ControlModifier);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    person.key(Qt::Key_I, Qt::ControlModifier);
    CHECK(person.sitting().queue()->pieceOf(1) == 0);
    person.key(Qt::Key_E, Qt::ControlModifier);  // its stamp is the first photo's
    CHECK(person.message().contains("stamp 1 of photo0.png"));
    person.type("BA");
    person.key(Qt::Key_S, Qt::ControlModifier);
    person.type("SHT.5");
    person.key(Qt::Key_S, Qt::ControlModifier);

    const auto found = person.sitting().find({});
    REQUIRE(found.size() == 1);
    const auto record = person.sitting().look("SHT.5");
    REQUIRE(record);
    CHECK(record->photos.size() == 2);
    REQUIRE(record->stamps.size() == 1);
    CHECK(record->stamps[0].views.size() == 2);
    CHECK(person.sitting().queue()->state(0) == PhotoState::Filed);
    CHECK(person.sitting().queue()->state(1) == PhotoState::Filed);
    // To what is filed no photo is added by itself.
    person.key(Qt::Key_I, Qt::ControlModifier);
    CHECK(person.sitting().queue()->pieceOf(1) == 0);
}

TEST_CASE("Putting photos together and apart is undone like everything else",
          "[app][gui][window][piece]")
{
    WindowHarness person;
    person.open({gui_tests::drawFolder(person.folder(), 2)});
    person.sitting().goTo(1);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    person.key(Qt::Key_I, Qt::ControlModifier);
    CHECK(person.sitting().queue()->pieceOf(1) == 0);
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.sitting().queue()->pieceOf(1) == -1);
    person.key(Qt::Key_Y, Qt::ControlModifier);
    CHECK(person.sitting().queue()->pieceOf(1) == 0);
}

TEST_CASE("Putting other photos together begins nothing on the one in hand, and is undone anywhere",
          "[app][gui][window][piece]")
{
    WindowHarness person;
    person.open({gui_tests::drawFolder(person.folder(), 3)});
    gui::PhotoQueue& queue = *person.sitting().queue();
    person.sitting().joinPiece(2, 1);
    CHECK(queue.state(0) == PhotoState::Read);
    CHECK(person.sitting().unfiled().isEmpty());
    person.sitting().goTo(1);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(queue.pieceOf(2) == -1);
    person.key(Qt::Key_Y, Qt::ControlModifier);
    CHECK(queue.pieceOf(2) == 1);
}

TEST_CASE("What was filed as one piece is not taken apart by undoing", "[app][gui][window][piece]")
{
    WindowHarness person;
    person.open({gui_tests::drawFolder(person.folder(), 3)});
    gui::PhotoQueue& queue = *person.sitting().queue();
    person.sitting().goTo(1);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    person.sitting().joinPiece(1, 0);
    person.type("B");
    REQUIRE(person.sitting().fileRecord({}));
    person.sitting().goTo(2);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(queue.pieceOf(1) == 0);
    CHECK(person.message().contains("stays as it was filed"));
}

TEST_CASE("The card that is put together stays chosen, so that the same key takes it back",
          "[app][gui][window][piece]")
{
    WindowHarness person;
    person.open({gui_tests::drawFolder(person.folder(), 4)});
    gui::PhotoQueue& queue = *person.sitting().queue();
    person.key(Qt::Key_F10);
    person.key(Qt::Key_Right, Qt::NoModifier, 2);
    person.key(Qt::Key_I, Qt::ControlModifier);
    CHECK(queue.pieceOf(2) == 1);
    CHECK(person.window().findChild<gui::ToReadList*>()->currentIndex().row() == 2);
    person.key(Qt::Key_I, Qt::ControlModifier);
    CHECK(queue.pieceOf(2) == -1);
    person.key(Qt::Key_F10);  // closed and opened again it begins at the photo in hand
    person.key(Qt::Key_F10);
    CHECK(person.window().findChild<gui::ToReadList*>()->currentIndex().row() == 0);
}

TEST_CASE("A card laid on another puts their photos together", "[app][gui][window][piece]")
{
    WindowHarness person;
    person.open({gui_tests::drawFolder(person.folder(), 3)});
    gui::PhotoQueue& queue = *person.sitting().queue();
    const std::unique_ptr<QMimeData> card(queue.mimeData({queue.index(2)}));
    queue.dropMimeData(card.get(), Qt::MoveAction, -1, -1, queue.index(0));
    CHECK(queue.pieceOf(2) == 0);
    CHECK(queue.rowCount() == 3);
    CHECK(queue.data(queue.index(2), gui::PhotoQueue::piece_role).toString() == "with photo0.png");
}

TEST_CASE("One stamp in two photos is one piece of evidence", "[app][gui][window][piece]")
{
    WindowHarness person;
    person.open({gui_tests::drawFolder(person.folder(), 2)});
    person.sitting().goTo(1);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    person.key(Qt::Key_I, Qt::ControlModifier);
    person.key(Qt::Key_F11);
    REQUIRE(person.waitFor([&] {
        const std::lock_guard lock(person.script().guard);
        return !person.script().texts_ranked.empty() &&
               person.script().texts_ranked.back() == "HART LTD / 1938 / HART LTD / 1938";
    }));
    person.key(Qt::Key_E, Qt::ControlModifier);
    CHECK(person.waitFor([&] {
        const std::lock_guard lock(person.script().guard);
        return person.script().texts_ranked.back() == "HART LTD / 1938";
    }));
}

TEST_CASE("A stamp laid on another in the drawer is a view of it, and it is undone",
          "[app][gui][window][piece]")
{
    WindowHarness person;
    openTwo(person);
    gui::PhotoQueue& queue = *person.sitting().queue();
    auto& list = *person.window().findChild<gui::ToReadList*>();
    const auto from = pointOnCard(list, 1, true), onto = pointOnCard(list, 0, true);
    REQUIRE(from);
    REQUIRE(onto);
    const std::string first = queue.stamps(0).at(0).id;

    layStamp(list, *from, *onto);
    CHECK(person.session().stamps().at(0).view_of == first);
    CHECK(queue.pieceOf(1) == 0);  // they show the same piece then
    CHECK(queue.stamps(1).at(0).is_view);
    CHECK(person.message().contains("stamp 1 of photo0.png"));
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(person.session().stamps().at(0).view_of.empty());
    CHECK(queue.pieceOf(1) == -1);
    person.key(Qt::Key_Y, Qt::ControlModifier);
    CHECK(person.session().stamps().at(0).view_of == first);

    layStamp(list, *onto, *from);  // once more, the other way round: taken back
    CHECK(person.session().stamps().at(0).view_of.empty());
    CHECK(queue.pieceOf(1) == 0);
    CHECK(queue.rowCount() == 2);
}

TEST_CASE("A stamp is laid on one that was only read ahead, and the other way round",
          "[app][gui][window][piece]")
{
    WindowHarness person(std::make_shared<gui_tests::FakeScript>(), gui_tests::readAhead);
    person.open({gui_tests::drawFolder(person.folder(), 3)});
    gui::PhotoQueue& queue = *person.sitting().queue();
    REQUIRE(person.waitFor(
        [&] { return queue.state(1) == PhotoState::Read && queue.state(2) == PhotoState::Read; }));
    person.key(Qt::Key_F10);
    auto& list = *person.window().findChild<gui::ToReadList*>();
    const auto mine = pointOnCard(list, 0, true), ahead = pointOnCard(list, 1, true);
    const auto last = pointOnCard(list, 2, true);
    REQUIRE(mine);
    REQUIRE(ahead);
    REQUIRE(last);
    layStamp(list, *mine, *ahead);
    CHECK(person.session().stamps().at(0).view_of == queue.stamps(1).at(0).id);
    const auto head = person.window().findChild<QLabel*>("stampNumber");
    CHECK(head->accessibleName().contains("a view of stamp 1 of photo1.png"));
    person.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK_FALSE(head->accessibleName().contains("a view of"));

    layStamp(list, *last, *mine);  // said before its photo is opened
    CHECK(queue.stamps(2).at(0).is_view);
    const std::string id = queue.stamps(2).at(0).id;
    person.sitting().goTo(2);
    REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    CHECK(person.session().stamps().at(0).id == id);
    CHECK(person.session().stamps().at(0).view_of == queue.stamps(0).at(0).id);
    CHECK(head->accessibleName().contains("a view of stamp 1 of photo0.png"));
}

TEST_CASE("A stamp laid beside the stamps of another card puts the photos together only",
          "[app][gui][window][piece]")
{
    WindowHarness person;
    openTwo(person);
    auto& list = *person.window().findChild<gui::ToReadList*>();
    const auto from = pointOnCard(list, 1, true), onto = pointOnCard(list, 0, false);
    REQUIRE(from);
    REQUIRE(onto);
    layStamp(list, *from, *onto);
    CHECK(person.sitting().queue()->pieceOf(1) == 0);
    CHECK(person.session().stamps().at(0).view_of.empty());
}

TEST_CASE("Views of a stamp go with it, and what is filed stays as it was filed",
          "[app][gui][window][piece]")
{
    WindowHarness person;
    person.open({gui_tests::drawFolder(person.folder(), 3)});
    for (const int place : {1, 2}) {
        person.sitting().goTo(place);
        REQUIRE(person.waitFor([&] { return person.sitting().session() != nullptr; }));
    }
    gui::PhotoQueue& queue = *person.sitting().queue();
    const auto stamp = [&](int place) {
        return gui::StampPlace{place, queue.stamps(place).at(0).id};
    };
    person.sitting().joinViews(stamp(2), stamp(1));
    person.sitting().joinViews(stamp(1), stamp(0));
    // Others are together with the second photo: it is not taken from them.
    CHECK(queue.pieceOf(1) == -1);
    CHECK(person.message().contains("Others are put together"));
    person.sitting().joinPiece(2, 1);  // apart again
    person.sitting().joinViews(stamp(1), stamp(0));
    CHECK(queue.pieceOf(1) == 0);
    CHECK(queue.stamps(1).at(0).is_view);
    person.sitting().joinPiece(2, 0);
    person.type("B");
    person.sitting().fileRecord({});
    person.sitting().joinViews(stamp(1), stamp(0));
    CHECK(person.message().contains("stays as it was filed"));
    CHECK(queue.stamps(1).at(0).is_view);
}
