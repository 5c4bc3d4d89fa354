#include "app/gui/sheet_layout.h"

#include <catch2/catch.hpp>

#include "tests/gui/readings.h"

namespace {

const QSizeF stamp(100, 70);

gui::SheetRoom roomOf(double width, double height)
{
    gui::SheetRoom room;
    room.width = width;
    room.height = height;
    return room;
}

}  // namespace

TEST_CASE("Each cell stands directly under its letter", "[app][gui][layout]")
{
    const models::Reading reading = gui_tests::engineReading({"HARTLTD", "1938"});
    const auto sheet = gui::layOutSheet(stamp, reading.lines, roomOf(1000, 2000));
    REQUIRE(sheet.bands.size() == 2);
    for (std::size_t line = 0; line < 2; ++line)
        for (std::size_t i = 0; i < reading.lines[line].cells.size(); ++i) {
            CAPTURE(line, i);
            const models::Cell& cell = reading.lines[line].cells[i];
            const QRectF& rect = sheet.bands[line].cells[i];
            CHECK(rect.left() == Approx(sheet.left + cell.left_px * sheet.scale));
            CHECK(rect.right() == Approx(sheet.left + cell.right_px * sheet.scale));
            CHECK(rect.top() == Approx(sheet.bands[line].strip.top()));
        }
}

TEST_CASE("The stamp fills the width, cut between its lines and nothing of it lost",
          "[app][gui][layout]")
{
    const models::Reading reading = gui_tests::engineReading({"HARTLTD", "1938"});
    const auto sheet = gui::layOutSheet(stamp, reading.lines, roomOf(1000, 2000));
    CHECK(stamp.width() * sheet.scale == Approx(1000 - 2 * gui::SheetRoom{}.margin));
    double y = 0;
    for (std::size_t i = 0; i < 2; ++i) {
        const models::Box& box = reading.lines[i].box_px;
        CHECK(sheet.bands[i].source.top() == Approx(y));
        CHECK(sheet.bands[i].source.bottom() >= box.y + box.height);  // the whole line is above
        CHECK(sheet.bands[i].strip.top() == Approx(sheet.bands[i].picture.bottom()));
        y = sheet.bands[i].source.bottom();
    }
    CHECK(sheet.bands[0].source.bottom() <= reading.lines[1].box_px.y);
    CHECK(sheet.tail_source.top() == Approx(y));
    CHECK(sheet.tail_source.bottom() == Approx(stamp.height()));
}

TEST_CASE("A tall stamp is made smaller before it is scrolled", "[app][gui][layout]")
{
    const models::Reading reading = gui_tests::engineReading({"A"});
    const auto high = gui::layOutSheet({100, 100}, reading.lines, roomOf(1000, 700));
    CHECK(high.height <= 700);
    const auto low = gui::layOutSheet({100, 100}, reading.lines, roomOf(1000, 200));
    CHECK(low.height > 200);
    CHECK(low.scale == Approx(0.6 * (1000 - 2 * gui::SheetRoom{}.margin) / 100));
}

TEST_CASE("Cells never overlap, whatever extents a reader gave", "[app][gui][layout]")
{
    models::Reading reading = gui_tests::engineReading({"HARTLTD"});
    auto& cells = reading.lines[0].cells;
    cells[1].right_px = 65;                    // swallows its neighbours
    cells[3].left_px = cells[3].right_px = 0;  // unknown
    cells[5].left_px = cells[5].right_px = 0;
    cells[6].right_px = 61;  // narrow
    const auto sheet = gui::layOutSheet(stamp, reading.lines, roomOf(400, 300));
    const auto& rects = sheet.bands[0].cells;
    for (std::size_t i = 0; i < rects.size(); ++i) {
        CAPTURE(i);
        CHECK(rects[i].width() >= gui::SheetRoom{}.least_cell - 1e-6);
        if (i > 0)
            CHECK(rects[i].left() >= rects[i - 1].right() - 1e-6);
    }
    const double swallowed = sheet.left + cells[2].left_px * sheet.scale;
    CHECK(rects[1].right() == Approx(swallowed));
}

TEST_CASE("More cells than fit still each have a place in the window", "[app][gui][layout]")
{
    const models::Reading reading = gui_tests::engineReading({std::string(80, 'I')});
    const auto sheet = gui::layOutSheet({800, 60}, reading.lines, roomOf(640, 300));
    CHECK(sheet.bands[0].cells.back().right() <= 640 + 1e-6);
    CHECK(sheet.bands[0].cells.front().left() >= -1e-6);
}

TEST_CASE("A reading without any places is set in a row", "[app][gui][layout]")
{
    models::Reading reading = gui_tests::engineReading({"ABC"});
    for (auto& cell : reading.lines[0].cells)
        cell.left_px = cell.right_px = 0;
    reading.lines[0].box_px = {};
    const auto sheet = gui::layOutSheet(stamp, reading.lines, roomOf(1000, 700));
    const auto& rects = sheet.bands[0].cells;
    CHECK(rects[0].left() < rects[1].left());
    CHECK(rects[1].left() < rects[2].left());
    CHECK(sheet.bands[0].source.height() == Approx(0));
    CHECK(sheet.tail_source.height() == Approx(stamp.height()));
}

TEST_CASE("Lines side by side keep their ink whole, each with its cells below",
          "[app][gui][layout]")
{
    models::Reading reading = gui_tests::engineReading({"19394071", "1938"});
    const models::Box whole = reading.lines[0].box_px;
    models::Line right = reading.lines[0];
    right.cells.erase(right.cells.begin(), right.cells.begin() + 4);
    right.box_px = {whole.x + 40, whole.y - 2, 40, whole.height};
    reading.lines[0].cells.resize(4);
    reading.lines[0].box_px.width = 40;
    reading.lines.insert(reading.lines.begin() + 1, right);
    const auto sheet = gui::layOutSheet(stamp, reading.lines, roomOf(1000, 2000));
    REQUIRE(sheet.bands.size() == 3);
    for (const std::size_t half : {0u, 1u}) {
        const models::Box& box = reading.lines[half].box_px;
        CHECK(sheet.bands[half].source.top() <= box.y);
        CHECK(sheet.bands[half].source.bottom() >= box.y + box.height);
        CHECK(sheet.bands[half].strip.top() >= sheet.bands[half].picture.bottom());
    }
    CHECK(sheet.bands[1].strip.top() == Approx(sheet.bands[0].strip.bottom()));
    CHECK(sheet.bands[2].source.top() == Approx(sheet.bands[1].source.bottom()));
    CHECK(sheet.bands[2].source.bottom() >=
          reading.lines[2].box_px.y + reading.lines[2].box_px.height);
}
