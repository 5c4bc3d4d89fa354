// Bent lines: their course, how they are unrolled, and that they are read through it.

#include "vision/line_curve.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <opencv2/imgproc.hpp>

#include "tests/vision/stamp_scene.h"
#include "vision/line_crop.h"
#include "vision/line_reader.h"
#include "vision/rectify.h"
#include "vision/tesseract_reader.h"

namespace {

constexpr double arc_radius = 100, arc_deg = 120;
const cv::Point2d arc_middle(200, 220);

// Around a circle's top, run to the right.
vision::LineCurve arcOverTop(double height_px)
{
    vision::LineCurve curve;
    for (int i = 0; i <= 24; ++i) {
        const double a = (-arc_deg / 2 + arc_deg * i / 24) * CV_PI / 180;
        curve.middle.emplace_back(arc_middle + arc_radius * cv::Point2d(std::sin(a), -std::cos(a)));
    }
    curve.height_px = height_px;
    return curve;
}

// The first line of a drawn stamp as its truth has it: the middle lies half a capital above the
// feet.
vision::LineCurve curveOf(const synthetic::StampTruth& stamp, double letter_px)
{
    const std::vector<cv::Point2f>& feet = stamp.lines.front().baseline;
    vision::LineCurve base{feet, 0};
    const vision::CurvePath path(base);
    vision::LineCurve curve;
    // The baseline's points are the middles of the letters; the line goes on by half of one.
    const double rim = letter_px / 2;
    for (int i = 0; i <= 32; ++i)
        curve.middle.emplace_back(
            path.at(-rim + (path.length() + 2 * rim) * i / 32, -letter_px / 2));
    curve.height_px = letter_px;
    return curve;
}

struct ArchedStamp {
    synthetic::DrawnPhoto drawn;
    vision::Photo photo;
    vision::StampOutline outline;  // with the true course of its first line, and no other
};

ArchedStamp archedStamp(const std::string& text, double arch_deg, double turn_deg)
{
    synthetic::SceneOptions scene = stampScene({text, "1938"}, turn_deg);
    scene.stamps.front().text.arch_deg = arch_deg;
    ArchedStamp stamp{synthetic::drawPhoto(scene), {}, {}};
    stamp.photo.pixels = stamp.drawn.pixels;
    const synthetic::StampTruth& truth = stamp.drawn.stamps.front();
    stamp.outline = vision::outlineFromCorners(truth.outline);
    stamp.outline.lines = {truth.lines.front().corners};
    stamp.outline.curves = {curveOf(truth, truth.letter_px)};
    return stamp;
}

int greyAt(const cv::Mat& grey, int x, int y)
{
    return grey.at<uchar>(y, x);
}

cv::Point2d letterMiddle(const synthetic::Quad& corners)
{
    return cv::Point2d(corners[0] + corners[1] + corners[2] + corners[3]) / 4;
}

}  // namespace

TEST_CASE("A course is walked by the way covered, and runs straight on beyond its ends",
          "[vision][curve]")
{
    const vision::CurvePath path(arcOverTop(20));
    const double whole = arc_radius * arc_deg * CV_PI / 180;
    // Chords of 5 degrees leave the circle by a thousandth of its radius.
    CHECK(path.length() == Approx(whole).epsilon(0.002));
    for (const double share : {0.0, 0.3, 0.5, 0.9, 1.0})
        for (const double across : {-10.0, 0.0, 10.0}) {
            const cv::Point2d point = path.at(share * path.length(), across);
            CHECK(cv::norm(point - arc_middle) == Approx(arc_radius - across).margin(0.2));
        }
    const cv::Point2d end = path.at(path.length()), beyond = path.at(path.length() + 30);
    CHECK(cv::norm(beyond - end) == Approx(30).margin(1e-6));
    const double leans = std::atan2((beyond - end).y, (beyond - end).x) * 180 / CV_PI;
    CHECK(leans == Approx(arc_deg / 2).margin(1));
    CHECK_THROWS_AS(vision::CurvePath({}), std::invalid_argument);
    CHECK_THROWS_AS(vision::CurvePath({{{3, 3}, {3, 3}}, 9}), std::invalid_argument);
}

TEST_CASE("A course keeps its meaning in another picture and run the other way", "[vision][curve]")
{
    const vision::LineCurve arc = arcOverTop(20);
    const double a = 30 * CV_PI / 180, c = 2 * std::cos(a), s = 2 * std::sin(a);
    const vision::LineCurve larger = vision::mappedCurve(arc, {c, -s, 40, s, c, 7, 0, 0, 1});
    CHECK(larger.height_px == Approx(40).margin(1e-6));
    REQUIRE(larger.middle.size() == arc.middle.size());
    CHECK(vision::CurvePath(larger).length() ==
          Approx(2 * vision::CurvePath(arc).length()).epsilon(1e-5));
    CHECK(vision::mappedCurve({}, cv::Matx33d::eye()).isStraight());

    const vision::CurvePath forth(arc), back(vision::reversedCurve(arc));
    const cv::Point2d here = forth.at(20, 5), there = back.at(forth.length() - 20, -5);
    CHECK(cv::norm(here - there) < 1e-6);
    // The band is a ring's piece: its area is the middle's length times its height.
    CHECK(cv::contourArea(vision::bandOf(arc)) == Approx(forth.length() * 20).epsilon(0.01));
}

TEST_CASE("A bent line is unrolled: what lies along its course lies in a row", "[vision][curve]")
{
    cv::Mat layer(400, 400, CV_8UC1, cv::Scalar(200));
    const vision::LineCurve arc = arcOverTop(24);
    const vision::CurvePath path(arc);
    const std::vector<double> shares{0.1, 0.35, 0.6, 0.85};
    for (const double share : shares)
        cv::circle(layer, path.at(share * path.length(), 6), 4, 20, cv::FILLED);
    const cv::Mat original = layer.clone();
    const vision::LineRendering rendering{.letter_px = 48, .rim = 0.5, .smoothing = 0};
    const vision::LineCrop crop =
        vision::cropLine(layer, {cv::boundingRect(vision::bandOf(arc)), arc}, rendering);

    CHECK(cv::norm(layer, original, cv::NORM_INF) == 0);
    CHECK(crop.scale == Approx(2));
    CHECK(crop.grey.rows == 96);
    CHECK(crop.grey.cols == Approx((path.length() + 24) * 2).margin(1));
    for (const double share : shares) {
        const double x = (12 + share * path.length()) * 2, y = (12 + 12 + 6) * 2;
        CAPTURE(share);
        CHECK(greyAt(crop.grey, cvRound(x), cvRound(y)) < 60);
        CHECK(greyAt(crop.grey, cvRound(x), cvRound(y) - 20) > 150);
        CHECK(crop.rectifiedX(x) == Approx(path.at(share * path.length()).x).margin(0.1));
    }
}

TEST_CASE("A course that is straight gives the crop that its box gives", "[vision][curve]")
{
    const vision::Photo photo = photoOf(stampScene({"SALTMERE"}, 0));
    cv::Mat layer;
    cv::cvtColor(photo.pixels, layer, cv::COLOR_BGR2GRAY);
    const cv::Rect2d box(260, 270, 280, 50);
    const vision::LineCurve level{{{260, 295}, {400, 295}, {540, 295}}, 50};
    const auto of_box = vision::cropLine(layer, {box, {}});
    const auto of_curve = vision::cropLine(layer, {box, level});
    REQUIRE(of_box.grey.size() == of_curve.grey.size());
    // Both look between pixels, in steps of a thirty-second of a pixel.
    CHECK(cv::norm(of_box.grey, of_curve.grey, cv::NORM_L1) /
              static_cast<double>(of_box.grey.total()) <
          1);
    CHECK(of_box.rectifiedX(100) == Approx(of_curve.rectifiedX(100)).margin(1e-3));
}

TEST_CASE("An arched line is read through its course, its cells under its letters",
          "[vision][curve][network]")
{
    vision::LineReader reader(WEFTMARK_SOURCE_DIR "/vision/weights");
    for (const double arch_deg : {60.0, 100.0, 150.0})
        for (const double turn_deg : {0.0, 70.0}) {
            CAPTURE(arch_deg, turn_deg);
            ArchedStamp stamp = archedStamp("SALTMERE WORKS", arch_deg, turn_deg);
            const auto enhanced =
                vision::enhanceStamp(vision::rectifyStamp(stamp.photo, stamp.outline));
            const models::Reading reading = reader.read(enhanced);

            REQUIRE(reading.lines.size() == 1);
            CHECK(models::plainText(reading.lines[0]) == "SALTMERE WORKS");
            const auto& letters = stamp.drawn.stamps[0].lines[0].letters;
            REQUIRE(reading.lines[0].cells.size() == letters.size());
            const cv::Matx33d rectified_from_photo = enhanced.rectified.photo_from_rectified.inv();
            for (std::size_t i = 0; i < letters.size(); ++i) {
                const models::Cell& cell = reading.lines[0].cells[i];
                const cv::Point2d true_middle = letterMiddle(letters[i].corners);
                const cv::Vec3d at =
                    rectified_from_photo * cv::Vec3d(true_middle.x, true_middle.y, 1);
                // Half a letter's height: a cell reaches half-way to its neighbours' middles, and
                // an & is wider than an I.
                CHECK((cell.left_px + cell.right_px) / 2 == Approx(at[0] / at[2]).margin(20));
            }
            stamp.outline.curves.clear();
            const auto straight =
                vision::enhanceStamp(vision::rectifyStamp(stamp.photo, stamp.outline));
            const auto unbent = reader.read(straight);
            CHECK((unbent.lines.empty() || models::plainText(unbent.lines[0]) != "SALTMERE WORKS"));
        }
}

TEST_CASE("A bent line keeps its course when its stamp is turned over or flipped",
          "[vision][curve]")
{
    const ArchedStamp stamp = archedStamp("SALTMERE WORKS", 100, 20);
    const auto plain = vision::rectifyStamp(stamp.photo, stamp.outline);
    REQUIRE(plain.curves.size() == 1);
    REQUIRE(plain.lines.size() == 1);
    const auto band = vision::bandOf(plain.curves[0]);
    for (const cv::Point2f& point : band) {
        CHECK(point.x >= plain.lines[0].x - 0.5);
        CHECK(point.y >= plain.lines[0].y - 0.5);
    }
    const auto look = [](const vision::RectifiedStamp& of) {
        cv::Mat grey;
        cv::cvtColor(of.pixels, grey, cv::COLOR_BGR2GRAY);
        return vision::cropLine(grey, {of.lines[0], of.curves[0]}).grey;
    };
    const cv::Mat upright = look(plain), over = look(vision::turnedOver(plain));
    cv::Mat back;
    cv::rotate(over, back, cv::ROTATE_180);
    const auto apart = [](const cv::Mat& a, const cv::Mat& b) {
        return cv::norm(a, b, cv::NORM_L1) / static_cast<double>(a.total());
    };
    REQUIRE(back.size() == upright.size());
    // A crop's size is whole pixels: half of one may be lost at an end, on sharp edges.
    const double another = apart(over, upright);
    CHECK(apart(back, upright) < another / 3);
    const auto mirrored = vision::rectifyStamp(stamp.photo, stamp.outline, {.mirrored = true});
    cv::Mat flipped;
    cv::flip(look(mirrored), flipped, 1);
    REQUIRE(flipped.size() == upright.size());
    CHECK(apart(flipped, upright) < another / 3);
}

TEST_CASE("Tesseract is shown a bent line unrolled too", "[vision][curve][tesseract]")
{
    vision::TesseractReader reader;
    const ArchedStamp stamp = archedStamp("SALTMERE WORKS", 100, 0);
    const models::Reading reading =
        reader.read(vision::enhanceStamp(vision::rectifyStamp(stamp.photo, stamp.outline)));
    REQUIRE(reading.lines.size() == 1);
    CHECK(models::plainText(reading.lines[0]) == "SALTMERE WORKS");
}
