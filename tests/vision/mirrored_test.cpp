#include <catch2/catch.hpp>
#include <cmath>
#include <opencv2/imgproc.hpp>

#include "tests/vision/stamp_scene.h"
#include "vision/locate.h"
#include "vision/tesseract_reader.h"
#include "vision/upright.h"

namespace {

struct MirroredScene {
    synthetic::DrawnPhoto drawn;
    vision::Photo plain, mirrored;

    cv::Point2d inPlain(const cv::Point2d& point) const
    {
        return {plain.pixels.cols - 1 - point.x, point.y};
    }
};

MirroredScene mirroredScene(double turn_deg)
{
    MirroredScene scene;
    scene.drawn = synthetic::drawPhoto(stampScene({"SALTMERE WORKS", "1938"}, turn_deg));
    scene.plain.pixels = scene.drawn.pixels;
    cv::flip(scene.drawn.pixels, scene.mirrored.pixels, 1);
    return scene;
}

vision::UprightStamp read(const vision::Photo& photo, bool mirrored,
                          vision::TesseractReader& reader)
{
    const auto stamps = vision::locateStamps(photo);
    REQUIRE_FALSE(stamps.empty());
    vision::RectifyOptions options;
    options.mirrored = mirrored;
    return vision::readRightWayUp(vision::rectifyStamp(photo, stamps.front(), options), reader);
}

std::string textIn(const models::Reading& reading)
{
    std::string text;
    for (const models::Line& line : reading.lines)
        text += (text.empty() ? "" : " / ") + models::plainText(line);
    return text;
}

// How surely letters were read, spaces aside.
double sumOfCertainties(const models::Reading& reading)
{
    double sum = 0;
    for (const models::Line& line : reading.lines)
        for (const models::Cell& cell : line.cells)
            if (!cell.alternatives.empty() && cell.alternatives.front().text != " ")
                sum += cell.alternatives.front().certainty;
    return sum;
}

cv::Point2d middleOf(const models::Cell& cell, const models::Line& line,
                     const vision::UprightStamp& stamp)
{
    return vision::photoFromRectified(
        stamp.enhanced.rectified,
        {(cell.left_px + cell.right_px) / 2, line.box_px.y + line.box_px.height / 2});
}

}  // namespace

TEST_CASE("A mirror image reads as the stamp that left it, on its head too", "[vision][mirrored]")
{
    vision::TesseractReader reader;
    for (const double turn : {8.0, 188.0}) {
        CAPTURE(turn);
        const MirroredScene scene = mirroredScene(turn);
        const auto stamp = read(scene.mirrored, true, reader);

        REQUIRE(textIn(stamp.reading) == "SALTMERE WORKS / 1938");
        // The photo was flipped left to right, so what leaned to the right leans to the left.
        CHECK(stamp.enhanced.rectified.up_deg == Approx(360 - turn).margin(3));
        for (std::size_t i = 0; i < stamp.reading.lines.size(); ++i) {
            const models::Line& line = stamp.reading.lines[i];
            const auto& letters = scene.drawn.stamps.front().lines[i].letters;
            REQUIRE(line.cells.size() == letters.size());
            for (std::size_t j = 0; j < letters.size(); ++j) {
                CAPTURE(letters[j].text);
                const cv::Point2f seen = scene.inPlain(middleOf(line.cells[j], line, stamp));
                const std::vector<cv::Point2f> truth(letters[j].corners.begin(),
                                                     letters[j].corners.end());
                // Half a letter's width is what a cell may be off and still show its letter.
                CHECK(cv::pointPolygonTest(truth, seen, true) > -4);
            }
        }
    }
}

TEST_CASE("Boxes of a mirror image lie where those of its stamp lie", "[vision][mirrored]")
{
    vision::TesseractReader reader;
    const MirroredScene scene = mirroredScene(0);
    const auto& quad = scene.drawn.stamps.front().outline;
    const auto plain = vision::outlineFromCorners(quad);
    const auto back = [&](int i) { return cv::Point2f(scene.inPlain(quad[i])); };
    const auto mirrored = vision::outlineFromCorners({back(1), back(0), back(3), back(2)});
    vision::RectifyOptions options;
    options.mirrored = true;

    const auto one = vision::readRightWayUp(vision::rectifyStamp(scene.plain, plain), reader);
    const auto other =
        vision::readRightWayUp(vision::rectifyStamp(scene.mirrored, mirrored, options), reader);

    REQUIRE(one.reading.lines.size() == 2);
    REQUIRE(other.reading.lines.size() == 2);
    for (std::size_t i = 0; i < 2; ++i) {
        const models::Box a = one.reading.lines[i].box_px, b = other.reading.lines[i].box_px;
        for (const cv::Point2d& at : {cv::Point2d(0, 0), cv::Point2d(1, 0), cv::Point2d(1, 1)}) {
            const auto here = vision::photoFromRectified(
                one.enhanced.rectified, {a.x + at.x * a.width, a.y + at.y * a.height});
            const auto there = vision::photoFromRectified(
                other.enhanced.rectified, {b.x + at.x * b.width, b.y + at.y * b.height});
            // Two pixels: the flipped picture is cut out anew, its rows may end a pixel elsewhere.
            CHECK(cv::norm(here - scene.inPlain(there)) < 2);
        }
    }
}

TEST_CASE("Writing that is no mirror image reads no better as one", "[vision][mirrored]")
{
    vision::TesseractReader reader;
    const MirroredScene scene = mirroredScene(8);
    const auto plain = read(scene.plain, false, reader);
    const auto flipped = read(scene.plain, true, reader);
    CHECK(textIn(plain.reading) == "SALTMERE WORKS / 1938");
    CHECK(textIn(flipped.reading) != textIn(plain.reading));
    CHECK(sumOfCertainties(flipped.reading) < sumOfCertainties(plain.reading));
}
