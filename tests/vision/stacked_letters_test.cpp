#include <catch2/catch.hpp>

#include "vision/stacked_letters.h"

namespace {

// A straight line from (100, 200), so long and so high, running up the photo.
vision::StampOutline uprightLine(float length, float height)
{
    const cv::Point2f begin(100, 200), along(0, -length), down(height, 0);
    const vision::Quad line{begin, begin + along, begin + along + down, begin + down};
    return {line, 0.9, vision::upOf(line), {line}};
}

}  // namespace

TEST_CASE("A short line becomes two lines across it", "[vision][stacked]")
{
    const auto across = vision::asLinesAcross(uprightLine(120, 60));
    REQUIRE(across);
    CHECK(across->score == 0.9);
    // What ran up the photo from its left side lies on its head: the photo's own up is the other
    // way.
    CHECK(across->up_deg == Approx(180));
    REQUIRE(across->lines.size() == 2);
    for (const vision::Quad& line : across->lines) {
        CHECK(cv::norm(line[1] - line[0]) == Approx(60 * 1.5));    // a quarter wider on each side
        CHECK(cv::norm(line[3] - line[0]) == Approx(120 * 0.42));  // a row of the two
        CHECK(vision::upOf(line) == Approx(180));
    }
    // The first line is the upper one as the outline stands: it lies nearer to the line's begin.
    CHECK(across->lines[0][0].y > across->lines[1][0].y);
}

TEST_CASE("Nothing but one short straight line becomes lines across", "[vision][stacked]")
{
    CHECK_FALSE(vision::asLinesAcross(uprightLine(60, 60)));   // one letter
    CHECK_FALSE(vision::asLinesAcross(uprightLine(260, 60)));  // a word
    vision::StampOutline two = uprightLine(120, 60);
    two.lines.push_back(two.lines.front());
    CHECK_FALSE(vision::asLinesAcross(two));
    vision::StampOutline drawn_by_hand = uprightLine(120, 60);
    drawn_by_hand.lines.clear();
    CHECK_FALSE(vision::asLinesAcross(drawn_by_hand));
    vision::StampOutline bent = uprightLine(120, 60);
    bent.curves = {{{{100, 200}, {110, 140}, {100, 80}}, 60}};
    CHECK_FALSE(vision::asLinesAcross(bent));
}
