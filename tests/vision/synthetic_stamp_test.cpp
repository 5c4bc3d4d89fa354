#include "tests/support/synthetic_stamp.h"

#include <cmath>

#include <catch2/catch.hpp>
#include <opencv2/imgproc.hpp>

namespace {

using synthetic::DrawnPhoto;
using synthetic::Quad;
using synthetic::SceneOptions;

// Small and quick to draw; the letters are large enough to hold many threads.
SceneOptions smallScene()
{
    SceneOptions scene;
    scene.size_px = {520, 400};
    scene.piece.width_px = 300;
    scene.stamps = {{.text = {.lines = {"NORTH BENCH", "1936"}, .letter_px = 30}}};
    scene.seed = 42;
    return scene;
}

cv::Mat insideOf(const Quad& quad, cv::Size size, int grow_px)
{
    const std::vector<cv::Point> corners(quad.begin(), quad.end());
    cv::Mat inside = cv::Mat::zeros(size, CV_8UC1);
    cv::fillConvexPoly(inside, corners, 255);
    const int width = 2 * grow_px + 1;
    cv::dilate(inside, inside, cv::getStructuringElement(cv::MORPH_ELLIPSE, {width, width}));
    return inside;
}

double inkIn(const DrawnPhoto& photo, const Quad& quad)
{
    return cv::mean(photo.ink, insideOf(quad, photo.ink.size(), 0))[0] / 255;
}

double most(const cv::Mat& values)
{
    double maximum = 0;
    cv::minMaxLoc(values, nullptr, &maximum);
    return maximum;
}

// How much darker the inked pixels are than the cloth right around them, in grey levels.
double contrast(const DrawnPhoto& photo, const cv::Mat& inked)
{
    cv::Mat grey, around;
    cv::cvtColor(photo.pixels, grey, cv::COLOR_BGR2GRAY);
    cv::dilate(inked, around, cv::getStructuringElement(cv::MORPH_ELLIPSE, {17, 17}));
    cv::Mat near;
    cv::dilate(inked, near, cv::getStructuringElement(cv::MORPH_ELLIPSE, {5, 5}));
    around -= near;
    return cv::mean(grey, around)[0] - cv::mean(grey, inked)[0];
}

// The direction in which the ink of a long line runs, clockwise from the photo's right, by the
// spread of the pixels: independent of the truth. 0 to 180.
double inkDirection(const cv::Mat& ink)
{
    const cv::Moments m = cv::moments(ink);
    const double turn = 0.5 * std::atan2(2 * m.mu11, m.mu20 - m.mu02) * 180 / CV_PI;
    return std::fmod(turn + 180, 180);
}

}  // namespace

TEST_CASE("The same seed draws the same photograph", "[vision][synthetic]")
{
    SceneOptions scene = smallScene();
    scene.details.stains = {{.along_px = -80}};
    scene.details.creases = {{.along_px = 60}};
    const DrawnPhoto first = synthetic::drawPhoto(scene), second = synthetic::drawPhoto(scene);
    CHECK(cv::norm(first.pixels, second.pixels, cv::NORM_INF) == 0);
    CHECK(cv::norm(first.ink, second.ink, cv::NORM_INF) == 0);
    CHECK(first.stamps[0].outline == second.stamps[0].outline);

    scene.seed = 43;
    const DrawnPhoto other = synthetic::drawPhoto(scene);
    CHECK(cv::norm(first.pixels, other.pixels, cv::NORM_L2SQR) >
          9.0 * static_cast<double>(first.pixels.total()));
}

TEST_CASE("A drawn photograph has the shape that was asked for", "[vision][synthetic]")
{
    const SceneOptions scene = smallScene();
    const DrawnPhoto photo = synthetic::drawPhoto(scene);
    CHECK(photo.pixels.size() == scene.size_px);
    CHECK(photo.pixels.type() == CV_8UC3);
    CHECK(photo.ink.size() == scene.size_px);
    CHECK(photo.ink.type() == CV_8UC1);
    REQUIRE(photo.stamps.size() == 1);
    REQUIRE(photo.stamps[0].lines.size() == 2);
    CHECK(photo.stamps[0].lines[0].text == "NORTH BENCH");
    REQUIRE(photo.stamps[0].lines[1].letters.size() == 4);
    CHECK(photo.stamps[0].lines[1].letters[3].text == "6");
}

TEST_CASE("Ink runs the way the truth says", "[vision][synthetic]")
{
    for (const double turn_deg : {0.0, 7.0, 64.0, 121.0, 180.0, 247.0, 335.0}) {
        CAPTURE(turn_deg);
        SceneOptions scene = smallScene();
        scene.stamps[0].text.lines = {"NORTHBENCHWORKS"};
        scene.stamps[0].text.letter_px = 18;
        scene.stamps[0].ink = {.fading = 0, .patchiness = 0};
        scene.stamps[0].turn_deg = turn_deg - 20;
        scene.piece.turn_deg = 20;
        const DrawnPhoto photo = synthetic::drawPhoto(scene);
        CHECK(photo.stamps[0].up_deg == Approx(turn_deg).margin(0.01));
        const double off = std::abs(inkDirection(photo.ink) - std::fmod(turn_deg, 180));
        // One line of unlike letters: its spread leans by up to a degree.
        CHECK(std::min(off, 180 - off) < 1.5);
    }
}

TEST_CASE("Every letter's box holds ink, and no ink lies outside the outline",
          "[vision][synthetic]")
{
    SceneOptions scene = smallScene();
    scene.stamps[0].ink = {.fading = 0.1, .patchiness = 0.1};
    scene.stamps[0].turn_deg = 25;
    scene.pitch_deg = 20;
    scene.yaw_deg = -15;
    const DrawnPhoto photo = synthetic::drawPhoto(scene);
    const auto& stamp = photo.stamps[0];

    for (const auto& line : stamp.lines)
        for (const auto& letter : line.letters) {
            CAPTURE(line.text, letter.text);
            if (letter.text != " ")
                CHECK(inkIn(photo, letter.corners) > 0.15);
            CHECK(letter.in_sight == Approx(1).margin(0.01));
        }
    // 3 px for soaking and blur; 25 is a tenth of full ink.
    cv::Mat outside_stamp = photo.ink.clone(), outside_lines = photo.ink.clone(),
            outside_letters = photo.ink.clone();
    outside_stamp.setTo(0, insideOf(stamp.outline, photo.ink.size(), 3));
    for (const auto& line : stamp.lines) {
        outside_lines.setTo(0, insideOf(line.corners, photo.ink.size(), 3));
        for (const auto& letter : line.letters)
            outside_letters.setTo(0, insideOf(letter.corners, photo.ink.size(), 3));
    }
    CHECK(most(outside_stamp) < 25);
    CHECK(most(outside_lines) < 25);
    CHECK(most(outside_letters) < 25);
}

TEST_CASE("Corners go round clockwise from the writing's top left", "[vision][synthetic]")
{
    SceneOptions scene = smallScene();
    scene.stamps[0].turn_deg = 180;
    const DrawnPhoto photo = synthetic::drawPhoto(scene);
    const Quad& upside_down = photo.stamps[0].outline;
    CHECK(upside_down[0].x > upside_down[1].x);  // its left is the photo's right
    CHECK(upside_down[0].y > upside_down[3].y);  // its top is the photo's bottom
    const auto& letters = photo.stamps[0].lines[0].letters;
    CHECK(letters.front().corners[0].x > letters.back().corners[0].x);
}

TEST_CASE("More fading leaves less contrast and less ink", "[vision][synthetic]")
{
    double last_contrast = 1e9, last_ink = 1e9;
    cv::Mat inked;
    for (const double fading : {0.0, 0.3, 0.6, 0.9}) {
        CAPTURE(fading);
        SceneOptions scene = smallScene();
        scene.stamps[0].ink.fading = fading;
        const DrawnPhoto photo = synthetic::drawPhoto(scene);
        if (inked.empty())
            inked = photo.ink > 100;
        const double now = contrast(photo, inked), ink = cv::sum(photo.ink)[0];
        CHECK(now < last_contrast - 2);
        CHECK(ink < last_ink * 0.9);
        last_contrast = now;
        last_ink = ink;
    }
    SceneOptions gone = smallScene();
    gone.stamps[0].ink.fading = 1;
    CHECK(most(synthetic::drawPhoto(gone).ink) == 0);
}

TEST_CASE("Fresh ink is plain on every material, light ink too", "[vision][synthetic]")
{
    using synthetic::Material;
    for (const Material material :
         {Material::Webbing, Material::Canvas, Material::Twill, Material::Leather}) {
        CAPTURE(static_cast<int>(material));
        SceneOptions scene = smallScene();
        scene.piece.material = material;
        scene.stamps[0].ink = {.fading = 0, .patchiness = 0};
        const DrawnPhoto dark = synthetic::drawPhoto(scene);
        CHECK(contrast(dark, dark.ink > 100) > 25);
        scene.piece.colour_bgr = {40, 44, 46};
        scene.stamps[0].ink.colour_bgr = {225, 230, 235};
        const DrawnPhoto light = synthetic::drawPhoto(scene);
        CHECK(contrast(light, light.ink > 100) < -25);
    }
}

TEST_CASE("Bare cloth has no ink", "[vision][synthetic]")
{
    SceneOptions scene = smallScene();
    scene.stamps.clear();
    const DrawnPhoto photo = synthetic::drawPhoto(scene);
    CHECK(photo.stamps.empty());
    CHECK(cv::countNonZero(photo.ink) == 0);
    CHECK_FALSE(photo.pixels.empty());
}

TEST_CASE("A hem hides what lies under it", "[vision][synthetic]")
{
    SceneOptions scene = smallScene();
    scene.stamps[0].text.lines = {"NORTHBENCH"};
    scene.stamps[0].ink = {.fading = 0, .patchiness = 0};
    scene.details.hem_px = 30.0;
    const DrawnPhoto photo = synthetic::drawPhoto(scene);
    const auto& letters = photo.stamps[0].lines[0].letters;
    CHECK(letters.front().in_sight > 0.99);
    CHECK(letters.back().in_sight < 0.01);
    CHECK(inkIn(photo, letters.front().corners) > 0.2);
    CHECK(inkIn(photo, letters.back().corners) < 0.01);
    const Quad &whole = photo.stamps[0].outline, &seen = photo.stamps[0].in_sight;
    CHECK(seen[1].x < whole[1].x - 30);
    CHECK(std::abs(seen[1].x - (260 + 30)) < 25);  // the hem, to within a letter
}

TEST_CASE("A smudge and a second impression spread the ink", "[vision][synthetic]")
{
    const auto inkedPixels = [](const SceneOptions& scene) {
        return cv::countNonZero(synthetic::drawPhoto(scene).ink > 40);
    };
    SceneOptions scene = smallScene();
    scene.stamps[0].ink = {.fading = 0.1, .patchiness = 0};
    const int clean = inkedPixels(scene);
    scene.stamps[0].ink.smudge_px = 9;
    CHECK(inkedPixels(scene) > 1.1 * clean);
    scene.stamps[0].ink.smudge_px = 0;
    scene.stamps[0].ink.second_px = 6;
    CHECK(inkedPixels(scene) > 1.1 * clean);
}

TEST_CASE("A drawing refuses what cannot be drawn", "[vision][synthetic]")
{
    const auto refuses = [](auto change) {
        SceneOptions scene = smallScene();
        scene.size_px = {64, 48};  // quick: most faults are met only on the way
        change(scene);
        CHECK_THROWS_AS(synthetic::drawPhoto(scene), std::invalid_argument);
    };
    refuses([](SceneOptions& scene) { scene.size_px = {10, 400}; });
    refuses([](SceneOptions& scene) { scene.pitch_deg = 60; });
    refuses([](SceneOptions& scene) { scene.piece.width_px = -1; });
    refuses([](SceneOptions& scene) { scene.piece.thread_px = 0.5; });
    refuses([](SceneOptions& scene) { scene.piece.unevenness = 2; });
    refuses([](SceneOptions& scene) { scene.light.elevation_deg = 0; });
    refuses([](SceneOptions& scene) { scene.light.ambient = 1.5; });
    refuses([](SceneOptions& scene) { scene.light.unevenness = -0.5; });
    refuses([](SceneOptions& scene) { scene.details.waviness = 1.5; });
    refuses([](SceneOptions& scene) { scene.details.fuzz = 1.5; });
    refuses([](SceneOptions& scene) { scene.details.stains = {{.strength = 2}}; });
    refuses([](SceneOptions& scene) { scene.camera.noise = -0.1; });
    refuses([](SceneOptions& scene) { scene.camera.jpeg_quality = 101; });
    refuses([](SceneOptions& scene) { scene.stamps[0].ink.fading = 1.2; });
    refuses([](SceneOptions& scene) { scene.stamps[0].ink.smudge_px = -2; });
    refuses([](SceneOptions& scene) { scene.stamps[0].text.lines.clear(); });
    refuses([](SceneOptions& scene) { scene.stamps[0].text.letter_px = 3; });
}
