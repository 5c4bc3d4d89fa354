// The network on crops of one line as people cut them: made pictures, whose truth is known.

#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <opencv2/imgproc.hpp>

#include "tests/vision/stamp_scene.h"
#include "vision/line_reader.h"
#include "vision/single_line.h"

namespace {

const std::vector<std::string> texts = {"SALTMERE WORKS", "H. & B. 1938", "MAR 1941",
                                        "PELLOW & SONS", "SIZE 4 \u2191"};

vision::LineReader& reader()
{
    static vision::LineReader one(WEFTMARK_SOURCE_DIR "/vision/weights");
    return one;
}

std::string readCrop(const cv::Mat& pixels)
{
    vision::Photo crop;
    crop.pixels = pixels;
    const models::Reading reading = vision::readSingleLine(crop, reader()).reading;
    return reading.lines.empty() ? "" : models::plainText(reading.lines.front());
}

// An upright crop around a line, with so much ground on every side, a share of its height.
cv::Mat cropOf(const synthetic::DrawnPhoto& drawn, const synthetic::LineTruth& line, double margin)
{
    const cv::Rect box =
        cv::boundingRect(std::vector<cv::Point2f>(line.corners.begin(), line.corners.end()));
    const double height = cv::norm(line.corners[3] - line.corners[0]);
    const int rim = cvRound(margin * height);
    const cv::Rect around(box.x - rim, box.y - rim, box.width + 2 * rim, box.height + 2 * rim);
    return drawn.pixels(around & cv::Rect({0, 0}, drawn.pixels.size())).clone();
}

using SceneChange = std::function<void(synthetic::SceneOptions&)>;

// How many of the texts are read whole.
int readWhole(double margin, const SceneChange& change)
{
    int right = 0;
    for (const std::string& text : texts) {
        synthetic::SceneOptions scene = stampScene({text}, 0);
        change(scene);
        const synthetic::DrawnPhoto drawn = synthetic::drawPhoto(scene);
        for (const synthetic::LineTruth& line : drawn.stamps.front().lines)
            if (line.text == text) {
                const std::string read = readCrop(cropOf(drawn, line, margin));
                UNSCOPED_INFO(text << " read as " << read);
                right += read == text ? 1 : 0;
            }
    }
    return right;
}

}  // namespace

TEST_CASE("Lines are read with any margin up to 40 % of their height", "[vision][network]")
{
    for (const double margin : {0.0, 0.1, 0.25, 0.4}) {
        CAPTURE(margin);
        CHECK(readWhole(margin, [](auto&) {}) == 5);
    }
}

TEST_CASE("Lines are read at tilts up to 35 degrees", "[vision][network]")
{
    for (const double tilt : {-35.0, -20.0, -10.0, 5.0, 10.0, 25.0, 35.0}) {
        CAPTURE(tilt);
        CHECK(readWhole(0.1, [&](auto& scene) { scene.stamps[0].turn_deg = tilt; }) == 5);
    }
}

TEST_CASE("Lines above and below that cut in are not read", "[vision][network]")
{
    CHECK(readWhole(0.4, [](auto& scene) {
              auto& text = scene.stamps[0].text;
              text.line_spacing = 1.2;
              text.lines = {"WENLOE & CO", text.lines.front(), "No 7301"};
          }) == 5);
}

TEST_CASE("A line on a moderate arc is read", "[vision][network]")
{
    CHECK(readWhole(0.1, [](auto& scene) { scene.stamps[0].text.arch_deg = 25; }) == 5);
}

TEST_CASE("Every face is read", "[vision][network]")
{
    using synthetic::Face;
    for (const Face face : {Face::Sans, Face::SansBold, Face::Condensed, Face::Narrow, Face::Serif,
                            Face::SerifBold, Face::Mono, Face::Stencil}) {
        CAPTURE(static_cast<int>(face));
        CHECK(readWhole(0.2, [&](auto& scene) { scene.stamps[0].text.face = face; }) == 5);
    }
}

TEST_CASE("Letters punched into leather without ink are read", "[vision][network]")
{
    CHECK(readWhole(0.2, [](auto& scene) {
              scene.piece.material = synthetic::Material::Leather;
              scene.piece.colour_bgr = {74, 112, 158};
              scene.stamps[0].ink.fading = 1;
              scene.stamps[0].depth_px = 4;
          }) == 5);
}

TEST_CASE("Outlined letters and letters of dots are read", "[vision][network]")
{
    for (const bool dotted : {false, true}) {
        CAPTURE(dotted);
        int right = 0;
        for (const std::string& text : texts) {
            const synthetic::Typeset set = synthetic::typeset({.lines = {text},
                                                               .face = synthetic::Face::SansBold,
                                                               .letter_px = dotted ? 7. : 40.,
                                                               .letter_spacing = 0.2,
                                                               .looseness = 0},
                                                              1);
            cv::Mat cover;
            set.cover.convertTo(cover, CV_8U, 255);
            cv::Mat crop(cover.size() * (dotted ? 6 : 1), CV_8UC3, cv::Scalar(150, 170, 180));
            if (dotted) {
                for (int y = 0; y < cover.rows; ++y)
                    for (int x = 0; x < cover.cols; ++x)
                        if (cover.at<uchar>(y, x) > 110)
                            cv::circle(crop, {6 * x + 3, 6 * y + 3}, 2, {40, 40, 40}, cv::FILLED,
                                       cv::LINE_AA);
            } else {
                cv::Mat edge;
                cv::morphologyEx(cover, edge, cv::MORPH_GRADIENT, cv::Mat());
                crop.setTo(cv::Scalar(40, 40, 40), edge > 128);
            }
            const std::string read = readCrop(crop);
            UNSCOPED_INFO(text << " read as " << read);
            right += read == text ? 1 : 0;
        }
        CHECK(right == 5);
    }
}
