#include "models/merge_readings.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "models/typed_notation.h"

namespace {

// An engine's reading, each letter 20 px wide, each line 40 px high; the certainty of every letter.
models::Reading engineReading(const std::string& engine, const std::string& typed, double certainty)
{
    models::Reading reading;
    reading.reader = engine + " 1.0";
    reading.basis = models::Basis::Photo;
    reading.lines = models::parseTyped(typed).lines;
    double y = 0;
    for (models::Line& line : reading.lines) {
        double x = 0;
        for (models::Cell& cell : line.cells) {
            cell.by = engine;
            cell.left_px = x;
            cell.right_px = x += 20;
            for (models::Alternative& alternative : cell.alternatives)
                alternative.certainty *= certainty;
        }
        line.box_px = {0, y, x, 40};
        y += 50;
    }
    return reading;
}

std::string textOf(const models::Reading& reading)
{
    std::string text;
    for (const models::Line& line : reading.lines)
        text.append(text.empty() ? "" : "|").append(models::plainText(line));
    return text;
}

}  // namespace

TEST_CASE("No readings give an empty one, one reading comes back as it is", "[models][merge]")
{
    CHECK(models::mergeReadings({}) == models::Reading{});
    const models::Reading one = engineReading("tesseract", "T.H. & CO / 1941", 0.8);
    CHECK(models::mergeReadings({one}) == one);
}

TEST_CASE("Agreement raises a certainty, its inputs stay as they are", "[models][merge]")
{
    const std::vector<models::Reading> readings = {engineReading("tesseract", "1941", 0.8),
                                                   engineReading("line-reader", "1941", 0.7)};
    const std::vector<models::Reading> before = readings;
    const models::Reading merged = models::mergeReadings(readings);

    CHECK(readings == before);
    CHECK(merged.reader == "tesseract 1.0 + line-reader 1.0");
    REQUIRE(textOf(merged) == "1941");
    for (const models::Cell& cell : merged.lines[0].cells) {
        CHECK(cell.alternatives.front().certainty > 0.8);
        CHECK(cell.alternatives.front().certainty < 1);
        CHECK(cell.state == models::CellState::Clear);
        CHECK(cell.by == "tesseract");  // it was surer of this letter
    }
}

TEST_CASE("Disagreement keeps both letters, the surer one first", "[models][merge]")
{
    const models::Reading merged = models::mergeReadings(
        {engineReading("tesseract", "1946", 0.6), engineReading("line-reader", "1940", 0.9)});
    REQUIRE(merged.lines.size() == 1);
    REQUIRE(merged.lines[0].cells.size() == 4);
    const models::Cell& last = merged.lines[0].cells[3];
    CHECK(last.state == models::CellState::Doubtful);
    REQUIRE(last.alternatives.size() == 2);
    CHECK(last.alternatives[0].text == "0");
    CHECK(last.alternatives[1].text == "6");
    CHECK(last.alternatives[0].certainty < 0.9);
    CHECK(last.alternatives[0].certainty + last.alternatives[1].certainty <= 1);
}

TEST_CASE("A letter that one reader missed stays, less certain", "[models][merge]")
{
    models::Reading missing = engineReading("tesseract", "TH CO", 0.9);
    models::Reading whole = engineReading("line-reader", "TH. CO", 0.9);
    for (auto* reading : {&missing, &whole})
        for (models::Cell& cell : reading->lines[0].cells)
            cell.left_px = cell.right_px = 0;  // by text alone
    const models::Reading merged = models::mergeReadings({missing, whole});
    REQUIRE(textOf(merged) == "TH. CO");
    CHECK(merged.lines[0].cells[2].alternatives.front().certainty < 0.9);
    CHECK(merged.lines[0].cells[1].alternatives.front().certainty > 0.9);
}

TEST_CASE("Lines are paired by their boxes, not by their number", "[models][merge]")
{
    const models::Reading both = engineReading("tesseract", "T.H. & CO / 1941", 0.8);
    models::Reading lower = engineReading("line-reader", "1941", 0.8);
    lower.lines[0].box_px.y = 52;
    const models::Reading merged = models::mergeReadings({both, lower});
    CHECK(textOf(merged) == "T.H. & CO|1941");
    CHECK(merged.lines[1].cells[0].alternatives.front().certainty > 0.8);
    CHECK(merged.lines[0].cells[0].alternatives.front().certainty == Approx(0.8));
}

TEST_CASE("A box outweighs what the line says", "[models][merge]")
{
    const models::Reading both = engineReading("tesseract", "1938 / 1941 / M", 0.8);
    models::Reading middle = engineReading("line-reader", "1938", 0.8);
    middle.lines[0].box_px.y = 52;
    const models::Reading merged = models::mergeReadings({both, middle});
    REQUIRE(merged.lines.size() == 3);
    CHECK(merged.lines[0] == both.lines[0]);
    CHECK(merged.lines[2] == both.lines[2]);
    CHECK(merged.lines[1].cells[3].alternatives.size() > 1);  // 8 and 1
}

TEST_CASE("Without boxes lines are paired by order and text", "[models][merge]")
{
    models::Reading both = engineReading("tesseract", "T.H. & CO / 1941", 0.8);
    models::Reading lower = engineReading("line-reader", "1941", 0.8);
    for (auto* reading : {&both, &lower})
        for (models::Line& line : reading->lines)
            line.box_px = {};
    CHECK(textOf(models::mergeReadings({both, lower})) == "T.H. & CO|1941");
}

TEST_CASE("A letter and traces of it give a doubtful letter, unread stretches stay",
          "[models][merge]")
{
    const models::Reading merged = models::mergeReadings(
        {engineReading("tesseract", "19[.]1", 0.8), engineReading("line-reader", "1+[.]1", 0.8)});
    REQUIRE(merged.lines[0].cells.size() == 4);
    CHECK(models::plainText(merged.lines[0]) ==
          "19\xEF\xBF\xBD"
          "1");
    CHECK(merged.lines[0].cells[1].alternatives.front().certainty < 0.8);
    CHECK(merged.lines[0].cells[2].state == models::CellState::Lost);
}

TEST_CASE("What a person confirmed is kept as it was left", "[models][merge]")
{
    models::Reading person = engineReading("tesseract", "194(6|0)", 0.9);
    person.reader = "A. Volunteer";
    person.lines[0].cells[2] = models::clearCell("3");
    person.lines[0].cells[2].by = "A. Volunteer";
    person.lines[0].cells[2].left_px = 40;
    person.lines[0].cells[2].right_px = 60;
    const models::Reading merged =
        models::mergeReadings({engineReading("line-reader", "1940X", 0.95), person});

    REQUIRE(merged.lines[0].cells.size() == 4);  // nothing is put into a person's line
    CHECK(merged.lines[0].cells[2] == person.lines[0].cells[2]);
    CHECK(merged.lines[0].cells[3].alternatives.front().text == "0");  // left to the engines
}

TEST_CASE("A reading of the object in hand stands above every engine", "[models][merge]")
{
    models::Reading person;
    person.reader = "A. Volunteer";
    person.basis = models::Basis::ObjectInHand;
    person.lines = models::parseTyped("T.H. & C?").lines;
    const models::Reading merged =
        models::mergeReadings({engineReading("tesseract", "J.H. & CO", 0.99), person});
    REQUIRE(merged.lines.size() == 1);
    CHECK(models::writeTyped(merged.lines) == "T.H. & C?");
}
