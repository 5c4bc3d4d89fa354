#include <cmath>
#include <set>

#include <catch2/catch.hpp>
#include <opencv2/imgproc.hpp>

#include "tests/support/damage.h"
#include "tests/support/drawn_marks.h"

namespace {

using synthetic::Damage;
using synthetic::DrawnPhoto;
using synthetic::SceneOptions;

SceneOptions scene()
{
    SceneOptions scene;
    scene.size_px = {420, 300};
    scene.piece.width_px = 260;
    scene.piece.material = synthetic::Material::Canvas;
    scene.piece.thread_px = 4;
    scene.stamps = {{.text = {.lines = {"VORLEM & CO", "1936"}, .letter_px = 24}}};
    scene.seed = 77;
    return scene;
}

cv::Mat greyOf(const DrawnPhoto& photo)
{
    cv::Mat grey;
    cv::cvtColor(photo.pixels, grey, cv::COLOR_BGR2GRAY);
    return grey;
}

// By other means than the generator's own: the darkest half of what lies under the face against
// the cloth 5 to 12 px from it.
double measuredContrast(const DrawnPhoto& photo)
{
    const cv::Mat grey = greyOf(photo);
    cv::Mat from_face;
    cv::distanceTransform(photo.face < 25, from_face, cv::DIST_L2, 3);
    int most = 0;
    for (int y = 0; y < grey.rows; ++y)
        for (int x = 0; x < grey.cols; ++x)
            if (photo.face.at<uchar>(y, x) > 127)
                most = std::max<int>(most, photo.ink.at<uchar>(y, x));
    double ink = 0, cloth = 0;
    int inked = 0, bare = 0;
    for (int y = 0; y < grey.rows; ++y)
        for (int x = 0; x < grey.cols; ++x) {
            const float away = from_face.at<float>(y, x);
            if (photo.face.at<uchar>(y, x) > 127 && 5 * photo.ink.at<uchar>(y, x) > 2 * most) {
                ink += grey.at<uchar>(y, x);
                ++inked;
            } else if (away >= 5 && away <= 12) {
                cloth += grey.at<uchar>(y, x);
                ++bare;
            }
        }
    REQUIRE(inked > 100);
    REQUIRE(bare > 100);
    return 1 - (ink / inked) / (cloth / bare);
}

double linear(double level)
{
    return std::pow((level / 255 + 0.055) / 1.055, 2.4);
}

}  // namespace

TEST_CASE("Every damage has one switch: off changes nothing, on changes the picture",
          "[vision][synthetic]")
{
    const SceneOptions clean = synthetic::undamaged(scene());
    const DrawnPhoto whole = synthetic::drawPhoto(clean);
    SceneOptions ruined = scene();
    for (const Damage damage : synthetic::allDamages()) {
        CAPTURE(synthetic::nameOf(damage));
        const DrawnPhoto off = synthetic::drawPhoto(synthetic::damaged(clean, damage, 0));
        CHECK(cv::norm(whole.pixels, off.pixels, cv::NORM_INF) == 0);
        CHECK(cv::norm(whole.ink, off.ink, cv::NORM_INF) == 0);
        const DrawnPhoto on = synthetic::drawPhoto(synthetic::damaged(clean, damage, 0.7));
        // Noise changes single pixels least, by 17 levels.
        CHECK(cv::norm(whole.pixels, on.pixels, cv::NORM_INF) > 10);
        ruined = synthetic::damaged(ruined, damage, 0.7);
    }
    const DrawnPhoto mended = synthetic::drawPhoto(synthetic::undamaged(ruined));
    CHECK(cv::norm(whole.pixels, mended.pixels, cv::NORM_INF) == 0);
    CHECK_THROWS_AS(synthetic::damaged(clean, Damage::Blur, 1.1), std::invalid_argument);
    CHECK_THROWS_AS(synthetic::damaged({}, Damage::Blur, 0.5), std::invalid_argument);
}

TEST_CASE("A drawn mark has the contrast of its set, on every material", "[vision][synthetic]")
{
    const std::vector<double> contrasts = drawnMarkContrasts();
    REQUIRE(contrasts == std::vector<double>{0.15, 0.25, 0.40});
    for (const double contrast : contrasts) {
        const std::vector<DrawnMark> marks = drawnMarks(contrast);
        for (const std::size_t which : {0U, 6U, 13U, 29U, 57U, 83U}) {
            const DrawnMark& mark = marks[which];
            CAPTURE(mark.id, static_cast<int>(mark.scene.piece.material));
            const DrawnPhoto photo = synthetic::drawPhoto(mark.scene);
            CHECK(photo.stamps.at(0).contrast == Approx(contrast).margin(0.01));
            // Another choice of ink and cloth; light falls off between them.
            CHECK(measuredContrast(photo) == Approx(contrast).margin(0.15 * contrast + 0.01));
            // Round letters stand out over 20 px a little, and boxes hold whole pixels.
            CHECK(photo.stamps[0].letter_px == Approx(20.5).margin(1.2));
        }
    }
}

TEST_CASE("The drawn marks are a hundred, the same at each contrast", "[vision][synthetic]")
{
    const std::vector<DrawnMark> faint = drawnMarks(0.15), plain = drawnMarks(0.40);
    REQUIRE(faint.size() == 100);
    REQUIRE(plain.size() == 100);
    std::set<std::string> ids, texts;
    std::set<std::size_t> line_counts;
    for (std::size_t i = 0; i < faint.size(); ++i) {
        ids.insert(faint[i].id);
        CHECK(faint[i].scene.seed == plain[i].scene.seed);
        const auto& lines = faint[i].scene.stamps.at(0).text.lines;
        CHECK(lines == plain[i].scene.stamps.at(0).text.lines);
        CHECK(faint[i].scene.stamps[0].contrast == 0.15);
        texts.insert(lines[0]);
        line_counts.insert(lines.size());
    }
    CHECK(ids.size() == 100);
    CHECK(texts.size() > 90);
    CHECK(line_counts == std::set<std::size_t>{1, 2, 3});
    CHECK_THROWS_AS(drawnMarks(0), std::invalid_argument);
}

TEST_CASE("A contrast that the ink cannot reach is refused", "[vision][synthetic]")
{
    SceneOptions pale = scene();
    pale.stamps[0].ink.colour_bgr = pale.piece.colour_bgr;
    pale.stamps[0].contrast = 0.5;
    CHECK_THROWS_AS(synthetic::drawPhoto(pale), std::invalid_argument);
    pale.stamps[0].contrast = 1.5;
    CHECK_THROWS_AS(synthetic::drawPhoto(pale), std::invalid_argument);
}

TEST_CASE("Letters stand on the base line of their line, straight or arched", "[vision][synthetic]")
{
    for (const double arch_deg : {0.0, 110.0}) {
        CAPTURE(arch_deg);
        SceneOptions arched = synthetic::undamaged(scene());
        arched.stamps[0].text = {
            .lines = {"HENLET", "1936"}, .letter_px = 24, .looseness = 0, .arch_deg = arch_deg};
        arched.stamps[0].turn_deg = 20;
        const DrawnPhoto photo = synthetic::drawPhoto(arched);
        const synthetic::LineTruth& line = photo.stamps[0].lines[0];
        REQUIRE(line.baseline.size() == (arch_deg > 0 ? 6U : 2U));
        const auto& first = line.letters.front().corners;
        const auto& last = line.letters.back().corners;
        const auto leans = [](const synthetic::Quad& c) {
            return std::atan2(c[1].y - c[0].y, c[1].x - c[0].x) * 180 / CV_PI;
        };
        // The middles of the first and last letter lie most of the arch apart.
        CHECK(leans(last) - leans(first) == Approx(0.85 * arch_deg).margin(0.1 * arch_deg + 0.5));
        const std::vector<cv::Point2f> outline(line.baseline.begin(), line.baseline.end());
        for (const auto& letter : line.letters) {
            const cv::Point2f foot = (letter.corners[2] + letter.corners[3]) / 2;
            double away = 1e9;
            for (std::size_t i = 1; i < outline.size(); ++i) {
                const cv::Point2f a = outline[i - 1], d = outline[i] - a;
                const float t = std::clamp((foot - a).dot(d) / d.dot(d), 0.0F, 1.0F);
                away = std::min(away, cv::norm(foot - a - d * t));
            }
            CHECK(away < 2);  // boxes hold whole pixels
        }
        for (const auto& letter : line.letters) {  // ink is where the boxes are
            std::vector<cv::Point> corners(letter.corners.begin(), letter.corners.end());
            cv::Mat inside = cv::Mat::zeros(photo.ink.size(), CV_8UC1);
            cv::fillConvexPoly(inside, corners, 255);
            CHECK(cv::mean(photo.ink, inside)[0] > 0.15 * 255);
        }
    }
}

TEST_CASE("The light of the truth is the light of the picture", "[vision][synthetic]")
{
    SceneOptions even = synthetic::undamaged(scene());
    even.stamps.clear();
    even.piece.width_px = 0;
    even.camera.exposure = 0.6;  // below the shoulder of the camera's curve
    SceneOptions uneven = even;
    uneven.light.unevenness = 0.5;
    uneven.light.shadows = {{.x_px = 60, .turn_deg = 80, .depth = 0.5}};
    uneven.camera.vignetting = 0.4;
    const DrawnPhoto flat = synthetic::drawPhoto(even), lit = synthetic::drawPhoto(uneven);
    CHECK(cv::norm(flat.light, cv::Mat::ones(flat.light.size(), CV_32FC1), cv::NORM_INF) < 1e-6);
    const cv::Mat before = greyOf(flat), after = greyOf(lit);
    for (const cv::Rect place : {cv::Rect(10, 10, 30, 30), cv::Rect(380, 20, 30, 30),
                                 cv::Rect(255, 130, 30, 30), cv::Rect(60, 250, 30, 30)}) {
        CAPTURE(place.x, place.y);
        const double ratio = linear(cv::mean(after(place))[0]) / linear(cv::mean(before(place))[0]);
        CHECK(ratio == Approx(cv::mean(lit.light(place))[0]).epsilon(0.06));
    }
}

TEST_CASE("What a hem hides and what was rubbed off counts as lost", "[vision][synthetic]")
{
    SceneOptions clean = synthetic::undamaged(scene());
    const double whole = synthetic::drawPhoto(clean).stamps[0].lost;
    CHECK(whole < 0.06);
    SceneOptions hidden = clean;
    hidden.details.hem_px = 0.0;  // through the stamp's middle
    const DrawnPhoto half = synthetic::drawPhoto(hidden);
    CHECK(half.stamps[0].lost == Approx(0.5).margin(0.12));
    CHECK(cv::countNonZero(half.face > 127) > 1.4 * cv::countNonZero(half.ink > 40));
    SceneOptions rubbed = clean;
    rubbed.stamps[0].ink.rubbed = 0.3;
    CHECK(synthetic::drawPhoto(rubbed).stamps[0].lost == Approx(0.3).margin(0.15));
}
