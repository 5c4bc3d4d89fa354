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

namespace {

// Letters 4 steps apart, then `lost` letters told in a gap, then letters again `room` pitches on.
vision::DecodedLine withGap(int lost, double room)
{
    vision::DecodedLine line;
    for (int i = 0; i < 4; ++i)
        line.places.push_back(placeAt(4 * i, class_a, 0.99));
    const double begin = 12, end = begin + 4 * room;
    for (int i = 1; i <= lost; ++i)
        line.places.push_back(placeAt(begin + i * (end - begin) / (lost + 1), 5, 0.7));
    for (int i = 0; i < 4; ++i)
        line.places.push_back(placeAt(end + 4 * i, class_a, 0.99));
    return line;
}

// A, B and a space; 4 is traces, 5 lost.
const vision::LineClasses spaced{{"A", "B", " "}};

}  // namespace

TEST_CASE("A gap far wider than the letters lost in it is a space", "[vision][network_cells]")
{
    for (const int lost : {1, 2}) {
        const vision::DecodedLine line = vision::withWideSpaces(withGap(lost, 7), spaced);
        REQUIRE(line.places.size() == 9);
        const vision::DecodedPlace& space = line.places[4];
        CHECK(space.shares.front().of_class == spaced.space());
        CHECK(space.shares.front().share < 0.9);  // it may be lost letters all the same
        CHECK(space.shares.back().of_class == spaced.lost());
    }
}

TEST_CASE("Letters lost at the line's pitch stay lost", "[vision][network_cells]")
{
    // A letter fills two pitches with its neighbours'; with a space on either side nearly four.
    for (const double room : {2.0, 3.0, 3.5})
        CHECK(vision::withWideSpaces(withGap(1, room), spaced).places[4].shares.front().of_class ==
              spaced.lost());
    const vision::DecodedLine three = vision::withWideSpaces(withGap(3, 4), spaced);
    CHECK(three.places.size() == 11);
    // Lost at the line's end: nothing tells where the gap ends.
    vision::DecodedLine open = withGap(1, 7);
    open.places.resize(5);
    CHECK(vision::withWideSpaces(open, spaced).places.back().shares.front().of_class ==
          spaced.lost());
}
