#include "vision/rectify.h"

#include <catch2/catch.hpp>
#include <opencv2/imgproc.hpp>

namespace {

vision::Photo blankPhoto()
{
    vision::Photo photo;
    photo.pixels = cv::Mat(300, 400, CV_8UC3, cv::Scalar::all(180));
    cv::circle(photo.pixels, {140, 110}, 6, cv::Scalar::all(20), cv::FILLED);
    return photo;
}

}  // namespace

// Unit square to (0,0) (4,0) (3,2) (1,2), here at 100 px a unit and moved by 20: its centre goes to
// (2, 4/3), exact fractions by Heckbert's square-to-quadrilateral formula (Fundamentals of Texture
// Mapping and Image Warping, 1989; the formula from memory, the fractions worked out by hand).
TEST_CASE("The middle of a stamp seen at a slant is where perspective puts it", "[vision][rectify]")
{
    vision::RectifyOptions options;
    options.margin = 0;
    options.correct_skew = false;
    const auto outline =
        vision::outlineFromCorners({cv::Point2f{20, 20}, {420, 20}, {320, 220}, {120, 220}});
    vision::Photo photo;
    photo.pixels = cv::Mat(300, 500, CV_8UC3, cv::Scalar::all(180));
    const auto stamp = vision::rectifyStamp(photo, outline, options);

    const cv::Point2d middle((stamp.pixels.cols - 1) / 2.0, (stamp.pixels.rows - 1) / 2.0);
    const cv::Point2d seen = vision::photoFromRectified(stamp, middle);
    CHECK(seen.x == Approx(20 + 200).margin(1.5));  // edges may lie half a pixel either way
    CHECK(seen.y == Approx(20 + 400 / 3.0).margin(1.5));
}

TEST_CASE("Turning a stamp over moves its pixels and its way back together", "[vision][rectify]")
{
    const vision::Photo photo = blankPhoto();
    const cv::Mat original = photo.pixels.clone();
    const auto outline =
        vision::outlineFromCorners({cv::Point2f{100, 80}, {300, 80}, {300, 160}, {100, 160}});
    const auto stamp = vision::rectifyStamp(photo, outline);
    const auto turned = vision::turnedOver(stamp);

    const cv::Point2d corner(0, 0);
    const cv::Point2d opposite(stamp.pixels.cols - 1, stamp.pixels.rows - 1);
    const cv::Point2d here = vision::photoFromRectified(stamp, corner);
    const cv::Point2d there = vision::photoFromRectified(turned, opposite);
    CHECK(here.x == Approx(there.x).margin(0.01));  // the same point by both ways
    CHECK(here.y == Approx(there.y).margin(0.01));
    CHECK(turned.up_deg == Approx(stamp.up_deg + 180).margin(0.01));
    cv::Mat back;
    cv::rotate(turned.pixels, back, cv::ROTATE_180);
    CHECK(cv::norm(back, stamp.pixels, cv::NORM_INF) == 0);
    CHECK(cv::norm(photo.pixels, original, cv::NORM_INF) == 0);
}

TEST_CASE("A mirror image is flipped, and its way back with it", "[vision][rectify]")
{
    const vision::Photo photo = blankPhoto();
    auto outline =
        vision::outlineFromCorners({cv::Point2f{110, 70}, {310, 100}, {300, 170}, {100, 140}});
    outline.lines = {{cv::Point2f{115, 80}, {205, 93}, {200, 123}, {110, 110}}};
    const auto plain = vision::rectifyStamp(photo, outline);
    vision::RectifyOptions options;
    options.mirrored = true;
    const auto mirrored = vision::rectifyStamp(photo, outline, options);

    cv::Mat flipped;
    cv::flip(mirrored.pixels, flipped, 1);
    CHECK(cv::norm(flipped, plain.pixels, cv::NORM_INF) == 0);
    CHECK(mirrored.mirrored);
    CHECK_FALSE(plain.mirrored);
    CHECK(mirrored.up_deg == plain.up_deg);
    const cv::Matx33d& way = mirrored.photo_from_rectified;
    CHECK(way(0, 0) * way(1, 1) - way(0, 1) * way(1, 0) < 0);
    const double right = plain.pixels.cols - 1;
    for (const auto& stamp : {mirrored, vision::turnedOver(mirrored)}) {
        CHECK(stamp.mirrored);
        const bool over = stamp.up_deg != plain.up_deg;
        const cv::Point2d there =
            vision::photoFromRectified(stamp, over ? cv::Point2d(30, plain.pixels.rows - 1 - 20)
                                                   : cv::Point2d(right - 30, 20));
        const cv::Point2d here = vision::photoFromRectified(plain, {30, 20});
        CHECK(cv::norm(here - there) < 1e-6);  // the same point by both ways
    }
    REQUIRE(mirrored.lines.size() == 1);
    CHECK(mirrored.lines[0].x == Approx(right - plain.lines[0].x - plain.lines[0].width));
    CHECK(mirrored.lines[0].y == Approx(plain.lines[0].y));
    CHECK(mirrored.lines[0].x > right / 2);  // the line stood in the left half
}

TEST_CASE("Straightening refuses what it cannot straighten", "[vision][rectify]")
{
    const auto outline =
        vision::outlineFromCorners({cv::Point2f{100, 80}, {300, 80}, {300, 160}, {100, 160}});
    CHECK_THROWS_AS(vision::rectifyStamp(vision::Photo{}, outline), std::invalid_argument);
    CHECK_THROWS_AS(vision::outlineFromCorners({cv::Point2f{0, 0}, {10, 10}, {10, 0}, {0, 10}}),
                    std::invalid_argument);
    CHECK_THROWS_AS(vision::locateStamps(vision::Photo{}), std::invalid_argument);
}
