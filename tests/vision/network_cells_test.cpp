#include "vision/network_cells.h"

#include <catch2/catch.hpp>

namespace {

const vision::LineClasses ab{{"A", "B"}};
constexpr int class_a = 1, traces = 3;

vision::DecodedPlace placeAt(double step, int of_class, double share)
{
    return {{{of_class, share}}, step, step + 1};
}

// A line over 30 steps; the row begins and ends some two steps within.
models::Line lineOf(std::vector<vision::DecodedPlace> places)
{
    vision::DecodedLine decoded;
    decoded.places = std::move(places);
    decoded.share = decoded.seen = 0.9;
    vision::LineCrop crop;
    crop.grey = cv::Mat::zeros(48, 120, CV_8UC1);
    return vision::lineFrom(vision::withinRow(decoded, crop), ab, crop, {0, 0, 120, 48}, "test");
}

}  // namespace

TEST_CASE("What the crop cuts beyond the row's ends is no letter", "[vision][network_cells]")
{
    const auto eyelet = placeAt(28.5, traces, 0.7);
    const models::Line line =
        lineOf({placeAt(5, class_a, 0.99), placeAt(15, class_a, 0.99), eyelet});
    CHECK(line.cells.size() == 2);
    const models::Line without = lineOf({placeAt(5, class_a, 0.99), placeAt(15, class_a, 0.99)});
    CHECK(line.certainty == without.certainty);
}

TEST_CASE("A plain letter that the row missed stays", "[vision][network_cells]")
{
    CHECK(lineOf({placeAt(0, class_a, 0.95), placeAt(15, class_a, 0.99)}).cells.size() == 2);
}

TEST_CASE("A faint letter at the row's end stays", "[vision][network_cells]")
{
    const models::Line line = lineOf({placeAt(5, class_a, 0.99), placeAt(25, traces, 0.5)});
    REQUIRE(line.cells.size() == 2);
    CHECK(line.cells[1].state == models::CellState::Traces);
}
