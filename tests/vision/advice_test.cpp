#include "vision/advice.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <opencv2/imgproc.hpp>

#include "tests/vision/stamp_scene.h"
#include "vision/sharpness.h"

namespace {

using Catch::Contains;

struct SeenMark {
    vision::Photo photo;
    std::vector<vision::StampOutline> stamps;
};

// A drawn mark with its true outline and lines, as the photo shows it when made `scale` times as
// large.
SeenMark seenMark(const synthetic::SceneOptions& scene, double scale = 1)
{
    const synthetic::DrawnPhoto drawn = synthetic::drawPhoto(scene);
    SeenMark seen;
    cv::resize(drawn.pixels, seen.photo.pixels, {}, scale, scale, cv::INTER_AREA);
    vision::StampOutline stamp = vision::outlineFromCorners(drawn.stamps[0].outline);
    for (const synthetic::LineTruth& line : drawn.stamps[0].lines)
        stamp.lines.push_back(line.corners);
    const auto scaled = [&](vision::Quad& quad) {
        for (cv::Point2f& corner : quad)
            corner *= static_cast<float>(scale);
    };
    scaled(stamp.corners);
    for (vision::Quad& line : stamp.lines)
        scaled(line);
    seen.stamps = {stamp};
    return seen;
}

std::vector<std::string> adviceOn(const SeenMark& seen)
{
    return vision::adviceOn(seen.photo, seen.stamps);
}

cv::Mat greyPixelsOf(const vision::Photo& photo)
{
    cv::Mat grey;
    cv::cvtColor(photo.pixels, grey, cv::COLOR_BGR2GRAY);
    return grey;
}

// Moved evenly over a way of so many pixels.
cv::Mat movedBy(const cv::Mat& pixels, int way_px, double turn_deg)
{
    const double a = turn_deg * CV_PI / 180;
    cv::Mat way = cv::Mat::zeros(2 * way_px + 1, 2 * way_px + 1, CV_32FC1);
    for (double at = -way_px / 2.0; at <= way_px / 2.0; at += 0.1)
        way.at<float>(cvRound(way_px + at * std::sin(a)), cvRound(way_px + at * std::cos(a))) += 1;
    way /= cv::sum(way)[0];
    cv::Mat moved;
    cv::filter2D(pixels, moved, -1, way);
    return moved;
}

}  // namespace

TEST_CASE("The blur of edges is measured, and a movement with its way and direction",
          "[vision][sharpness]")
{
    synthetic::SceneOptions scene = stampScene({"SALTMERE WORKS", "1938"}, 0);
    scene.camera = {.blur_px = 0.6, .noise = 0.2, .sharpening = 0};
    const SeenMark mark = seenMark(scene);
    const vision::Quad& corners = mark.stamps[0].corners;
    const cv::Mat sharp = greyPixelsOf(mark.photo)(
        cv::boundingRect(std::vector<cv::Point2f>(corners.begin(), corners.end())));
    constexpr double stroke_px = 7;
    const auto measured = [&](const cv::Mat& grey) {
        return vision::measureSharpness(grey, stroke_px);
    };
    const vision::Sharpness as_taken = measured(sharp);
    CHECK(as_taken.blur_px < 1.5);
    CHECK(as_taken.moved_px == 0);
    for (const double blur : {2.0, 4.0}) {
        CAPTURE(blur);
        cv::Mat blurred;
        cv::GaussianBlur(sharp, blurred, {}, blur);
        const vision::Sharpness seen = measured(blurred);
        // Strokes are not all of one width, and threads among them: up to a third too much.
        CHECK(seen.blur_px == Approx(std::hypot(blur, as_taken.blur_px)).epsilon(0.35));
        CHECK(seen.moved_px == 0);
    }
    for (const double turn : {0.0, 60.0, 120.0}) {
        CAPTURE(turn);
        const vision::Sharpness seen = measured(movedBy(sharp, 14, turn));
        CHECK(seen.moved_px == Approx(14).epsilon(0.45));
        CHECK(std::abs(std::remainder(seen.moved_deg - turn, 180)) <= 20);
    }
    CHECK(measured(cv::Mat(50, 50, CV_8UC1, cv::Scalar(90))).blur_px == 0);
    CHECK_THROWS_AS(measured(cv::Mat()), std::invalid_argument);
    CHECK_THROWS_AS(vision::measureSharpness(sharp, 0), std::invalid_argument);
}

TEST_CASE("A good photo needs no advice", "[vision][advice]")
{
    for (const double turn : {0.0, 30.0, 200.0})
        CHECK(adviceOn(seenMark(stampScene({"SALTMERE WORKS", "1938"}, turn))).empty());
}

TEST_CASE("Letters too small, blur, movement and lost light are told with numbers and a remedy",
          "[vision][advice]")
{
    const synthetic::SceneOptions scene = stampScene({"SALTMERE WORKS", "1938"}, 0);
    const SeenMark good = seenMark(scene);

    const auto small = adviceOn(seenMark(scene, 0.22));
    REQUIRE(small.size() == 1);
    CHECK_THAT(small[0], Contains("about 9") && Contains("px high") && Contains("from nearer"));

    const auto changed = [&](const auto& change) {
        SeenMark seen = good;
        seen.photo.pixels = cv::Mat();  // or the good photo's own pixels would be written over
        change(good.photo.pixels, seen.photo.pixels);
        return adviceOn(seen);
    };
    const auto blurred =
        changed([](const cv::Mat& from, cv::Mat& to) { cv::GaussianBlur(from, to, {}, 6); });
    REQUIRE(blurred.size() == 1);
    CHECK_THAT(blurred[0], Contains("is blurred by about") && Contains("focus"));

    // A camera blurs first and adds its noise then: the steepest edges are the noise's.
    const auto noisy = [&](double deviation, cv::Mat picture) {
        cv::Mat noise(picture.size(), CV_16SC3), sum;
        cv::RNG dice(11);
        dice.fill(noise, cv::RNG::NORMAL, 0, deviation);
        cv::add(picture, noise, sum, cv::noArray(), CV_8U);
        return sum;
    };
    for (const double deviation : {1.0, 3.0}) {
        CAPTURE(deviation);
        const auto grainy = changed([&](const cv::Mat& from, cv::Mat& to) {
            cv::GaussianBlur(from, to, {}, 4.5);
            to = noisy(deviation, to);
        });
        REQUIRE(grainy.size() == 1);
        CHECK_THAT(grainy[0], Contains("is blurred by about"));
        const auto shaken = changed(
            [&](const cv::Mat& from, cv::Mat& to) { to = noisy(deviation, movedBy(from, 18, 0)); });
        REQUIRE(shaken.size() == 1);
        CHECK_THAT(shaken[0], Contains("moved by about"));
        CHECK(changed([&](const cv::Mat& from, cv::Mat& to) {
                  to = noisy(deviation, from);
              }).empty());
    }

    const auto moved = changed([](const cv::Mat& from, cv::Mat& to) { to = movedBy(from, 18, 0); });
    REQUIRE(moved.size() == 1);
    CHECK_THAT(moved[0], Contains("moved by about") && Contains("rest the camera"));

    const auto burnt =
        changed([](const cv::Mat& from, cv::Mat& to) { from.convertTo(to, -1, 3.2); });
    REQUIRE(burnt.size() == 1);
    CHECK_THAT(burnt[0], Contains("% of the mark") && Contains("expose less"));

    const auto dark =
        changed([](const cv::Mat& from, cv::Mat& to) { from.convertTo(to, -1, 0.5, -60); });
    REQUIRE(dark.size() == 1);
    CHECK_THAT(dark[0], Contains("lost in black") && Contains("expose more"));
}

TEST_CASE("A movement is one of all marks", "[vision][advice]")
{
    SeenMark seen = seenMark(stampScene({"SALTMERE WORKS", "1938"}, 0));
    const cv::Mat moved = movedBy(seen.photo.pixels, 18, 0);
    SeenMark both = seen;
    both.photo.pixels = cv::Mat();
    cv::vconcat(std::vector<cv::Mat>{seen.photo.pixels, moved}, both.photo.pixels);
    const auto down = [&](vision::StampOutline stamp) {
        const cv::Point2f below(0, static_cast<float>(moved.rows));
        for (cv::Point2f& corner : stamp.corners)
            corner += below;
        for (vision::Quad& line : stamp.lines)
            for (cv::Point2f& corner : line)
                corner += below;
        return stamp;
    };
    both.stamps = {down(seen.stamps[0])};
    CHECK(adviceOn(both).size() == 1);
    both.stamps.push_back(seen.stamps[0]);
    both.stamps.push_back(seen.stamps[0]);
    CHECK(adviceOn(both).empty());
}

TEST_CASE("Advice is given of likely marks, once a kind, and of sizes that are known",
          "[vision][advice]")
{
    SeenMark seen = seenMark(stampScene({"SALTMERE WORKS", "1938"}, 0), 0.22);
    seen.stamps.push_back(seen.stamps.front());
    CHECK(adviceOn(seen).size() == 1);
    seen.stamps.resize(1);
    seen.stamps[0].lines.clear();  // drawn by hand
    CHECK(adviceOn(seen).empty());
    seen = seenMark(stampScene({"SALTMERE WORKS", "1938"}, 0), 0.22);
    seen.stamps[0].score = 0.3;
    CHECK(adviceOn(seen).empty());
    CHECK(vision::adviceOn(seen.photo, {}).empty());
    CHECK_THROWS_AS(vision::adviceOn({}, {}), std::invalid_argument);
    CHECK_THROWS_AS(vision::adviceOn(seen.photo, {}, {.most_blur = 0}), std::invalid_argument);
    CHECK_THROWS_AS(vision::adviceOn(seen.photo, {}, {.least_letter_px = 0}),
                    std::invalid_argument);
}
