#include "vision/single_line.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <opencv2/imgproc.hpp>

#include "tests/vision/stamp_scene.h"
#include "vision/rectify.h"

TEST_CASE("A crop of one tilted line is laid along its text", "[vision][locate]")
{
    for (const double turn : {-30.0, 0.0, 20.0}) {
        CAPTURE(turn);
        const auto drawn = synthetic::drawPhoto(stampScene({"SALTMERE WORKS"}, turn));
        const auto& corners = drawn.stamps.front().outline;
        const cv::Rect around =
            cv::boundingRect(std::vector<cv::Point2f>(corners.begin(), corners.end()));
        vision::Photo crop;
        crop.pixels = drawn.pixels(around & cv::Rect({0, 0}, drawn.pixels.size())).clone();
        const auto outlines = vision::outlinesOfSingleLine(crop);
        CHECK(outlines.front().up_deg == 0);  // as it is, which needs no search
        if (turn != 0) {
            REQUIRE(outlines.size() > 1);
            CHECK(betweenDirections(outlines[1].up_deg, drawn.stamps.front().up_deg) < 3);
        }
    }
}

TEST_CASE("The outline of any crop lies on it", "[vision][locate]")
{
    cv::RNG dice(5);
    cv::Mat pixels;
    for (int round = 0; round < 60; ++round) {
        CAPTURE(round);
        if (round % 12 == 0)
            pixels = synthetic::drawPhoto(stampScene({"WORKS 1938"}, dice.uniform(-60.0, 60.0),
                                                     dice.uniform(0.1, 0.6)))
                         .pixels;
        const cv::Size size(dice.uniform(30, 400), dice.uniform(20, 200));
        const cv::Rect cut(dice.uniform(0, pixels.cols - size.width),
                           dice.uniform(0, pixels.rows - size.height), size.width, size.height);
        vision::Photo crop;
        crop.pixels = pixels(cut).clone();
        for (const vision::StampOutline& outline : vision::outlinesOfSingleLine(crop))
            CHECK_NOTHROW(vision::rectifyStamp(crop, outline));
    }
}
