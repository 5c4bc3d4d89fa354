#include "app/flow/told_letters.h"

#include <catch2/catch.hpp>

#include "tests/app/fake_reader.h"

using support::seenLine;

namespace {

models::Line tracesLine(std::size_t count)
{
    models::Line line;
    line.cells.resize(count);
    for (models::Cell& cell : line.cells)
        cell.state = models::CellState::Traces;
    return line;
}

flow::StampExamination stampOf(double score, const models::Line& line)
{
    flow::StampExamination stamp;
    stamp.outline.score = score;
    stamp.proposal.lines = {line};
    return stamp;
}

models::Line doubtfulLine(const std::string& letters)
{
    models::Line line = seenLine(letters, 0.4);
    for (models::Cell& cell : line.cells)
        cell.state = models::CellState::Doubtful;
    return line;
}

}  // namespace

TEST_CASE("A speck beside lines of letters is no line", "[app][told_letters]")
{
    models::Reading reading;
    reading.lines = {tracesLine(1), seenLine("POLGLASE", 0.98), {}, tracesLine(2)};

    reading = flow::withoutEmptyLines(reading);

    REQUIRE(reading.lines.size() == 2);
    CHECK(reading.lines[0].cells.size() == 8);
    CHECK(reading.lines[1].cells.size() == 2);  // two may be worn letters
}

TEST_CASE("A speck that is all there is stays", "[app][told_letters]")
{
    models::Reading reading;
    reading.lines = {tracesLine(1), doubtfulLine("N")};
    CHECK(flow::withoutEmptyLines(reading).lines.size() == 2);
}

TEST_CASE("What may be a seam is no mark beside marks that can be read", "[app][told_letters]")
{
    std::vector<flow::StampExamination> stamps{
        stampOf(0.98, seenLine("POLGLASE", 0.98)), stampOf(0.98, doubtfulLine("EW")),
        stampOf(0.995, doubtfulLine("EW")), stampOf(0.5, seenLine("1941", 0.98)),
        stampOf(0.9, tracesLine(3))};

    flow::dropUntold(stamps);

    REQUIRE(stamps.size() == 3);
    CHECK(stamps[1].outline.score == 0.995);
    CHECK(stamps[2].proposal.lines[0].cells.size() == 4);
}

TEST_CASE("Where no mark can be read every one found is shown", "[app][told_letters]")
{
    std::vector<flow::StampExamination> stamps{stampOf(0.6, doubtfulLine("EW")),
                                               stampOf(0.9, tracesLine(3))};
    flow::dropUntold(stamps);
    CHECK(stamps.size() == 2);
}

TEST_CASE("Of a short line it counts how likely there is a mark", "[app][told_letters]")
{
    models::Reading reading;
    reading.lines = {seenLine("AB", 0.96), seenLine("ABC", 0.96)};
    reading.lines[0].certainty = 0.8;
    reading.lines[1].certainty = 0.8;

    flow::weighShortLines(reading, 0.5);

    CHECK(reading.lines[0].certainty == Approx(0.4));
    CHECK(reading.lines[0].cells[0].alternatives[0].certainty == Approx(0.48));
    CHECK(reading.lines[0].cells[0].state == models::CellState::Doubtful);
    CHECK(reading.lines[1].certainty == Approx(0.8));
}

TEST_CASE("A line that runs out of the picture is cut off there", "[app][told_letters]")
{
    vision::RectifiedStamp stamp;
    stamp.photo_from_rectified = cv::Matx33d(1, 0, -30, 0, 1, 50, 0, 0, 1);  // 30 px to the left
    models::Reading reading;
    reading.lines = {seenLine("POLGLASE", 0.98), seenLine("1941", 0.98), seenLine("LTD", 0.98)};
    reading.lines[0].box_px = {10, 0, 200, 20};  // in the photo from x = -20 to 180
    reading.lines[1].box_px = {40, 30, 80, 20};
    reading.lines[2].box_px = {40, 60, 500, 20};  // to x = 510

    flow::tellCutEnds(reading, stamp, {400, 300});

    CHECK(reading.lines[0].left_end == models::LineEnd::CutOff);
    CHECK(reading.lines[0].right_end == models::LineEnd::Unknown);
    CHECK(reading.lines[1].left_end == models::LineEnd::Unknown);
    CHECK(reading.lines[1].right_end == models::LineEnd::Unknown);
    CHECK(reading.lines[2].right_end == models::LineEnd::CutOff);
}
