// From the finder network's answer to lines, on answers that are drawn.

#include "vision/finder_lines.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <opencv2/imgproc.hpp>

#include "tests/vision/drawn_table.h"

namespace {

const cv::Size picture(640, 480);

std::vector<vision::FoundLine> found(const std::vector<TrueLine>& lines, double wavering = 0)
{
    std::vector<vision::FoundLine> result;
    for (const vision::FinderLine& line : vision::linesOf(drawnTable(picture, lines, wavering)))
        result.push_back(line.line);
    return result;
}

// The area found: the course's band where the line is bent, else its corners.
cv::Mat areaOf(const vision::FoundLine& line)
{
    std::vector<cv::Point2f> edge =
        line.curve.isStraight() ? std::vector<cv::Point2f>(line.corners.begin(), line.corners.end())
                                : vision::bandOf(line.curve);
    cv::Mat area = cv::Mat::zeros(picture, CV_8UC1);
    const std::vector<cv::Point> rounded(edge.begin(), edge.end());
    cv::fillPoly(area, std::vector<std::vector<cv::Point>>{rounded}, 255);
    return area;
}

struct Cover {
    double covered = 0, surplus = 0;  // of the letters' area: what is found of it, and in all
};

Cover coverOf(const vision::FoundLine& line, const TrueLine& truth)
{
    const std::vector<cv::Point2f> letters = lettersOf(truth);
    cv::Mat true_area = cv::Mat::zeros(picture, CV_8UC1);
    const std::vector<cv::Point> rounded(letters.begin(), letters.end());
    cv::fillPoly(true_area, std::vector<std::vector<cv::Point>>{rounded}, 255);
    const cv::Mat area = areaOf(line);
    const double whole = cv::countNonZero(true_area);
    return {cv::countNonZero(area & true_area) / whole, cv::countNonZero(area) / whole};
}

double turnOf(const vision::FoundLine& line)
{
    const cv::Point2f span = vision::spanOf(line);
    return std::atan2(span.y, span.x) * 180 / CV_PI;
}

double turnApart(double a_deg, double b_deg)
{
    return std::abs(std::remainder(a_deg - b_deg, 180));
}

}  // namespace

TEST_CASE("A line is found at any angle, upside down too, with its height and its letters covered",
          "[vision][finder]")
{
    for (const double capital_px : {8.0, 20.0, 60.0})
        for (double turn = -180; turn < 180; turn += 22.5) {
            CAPTURE(capital_px, turn);
            const TrueLine truth{{320, 240}, turn, 6 * capital_px, capital_px};
            const auto lines = found({truth}, 0.1);
            REQUIRE(lines.size() == 1);
            CHECK(lines[0].curve.isStraight());
            // A square of the answer is four pixels: of a line 48 px long an end may be off by two.
            CHECK(turnApart(turnOf(lines[0]), turn) < 3);
            CHECK(std::abs(turnOf(lines[0])) < 93);
            CHECK(lines[0].height_px == Approx(capital_px).epsilon(0.04));
            const Cover cover = coverOf(lines[0], truth);
            CHECK(cover.covered > 0.95);
            CHECK(cover.surplus < (capital_px < 10 ? 1.6 : 1.35));
        }
}

TEST_CASE("Lines one below another stay apart", "[vision][finder]")
{
    const auto lines = found({{{320, 200}, 0, 240, 20}, {{320, 226}, 0, 240, 20}});
    CHECK(lines.size() == 2);
}

TEST_CASE("Parts that go on from one another are one line, others are not", "[vision][finder]")
{
    const TrueLine first{{200, 240}, 0, 160, 20};
    const auto next = [&](double gap, double down, double turn, double capital) {
        return TrueLine{{280 + gap + 60, 240 + down}, turn, 120, capital};
    };
    CHECK(found({first, next(24, 0, 0, 20)}).size() == 1);
    CHECK(found({first, next(24, 0, 4, 22)}).size() == 1);
    CHECK(found({first, next(56, 0, 0, 20)}).size() == 2);    // too wide a gap
    CHECK(found({first, next(24, 14, 0, 20)}).size() == 2);   // another row
    CHECK(found({first, next(24, 0, 180, 20)}).size() == 1);  // on its head: reading tells
    CHECK(found({first, next(24, 0, 40, 20)}).size() == 2);   // at a slant
    CHECK(found({first, next(24, 0, 0, 36)}).size() == 2);    // larger letters

    const auto joined = found({first, next(24, 0, 0, 20)});
    const cv::Rect2f box = cv::boundingRect(
        std::vector<cv::Point2f>(joined[0].corners.begin(), joined[0].corners.end()));
    CHECK(box.x < 121);
    CHECK(box.x + box.width > 423);
    const auto three = found({first, next(24, 0, 0, 20), {{508, 240}, 0, 120, 20}});
    CHECK(three.size() == 1);
}

TEST_CASE("A bent line has the course of its letters", "[vision][finder]")
{
    for (const double arch_deg : {35.0, 100.0, 190.0, -70.0})
        for (const double turn : {0.0, 60.0, -40.0}) {
            CAPTURE(arch_deg, turn);
            const TrueLine truth{{320, 240}, turn, 300, 24, arch_deg};
            const auto lines = found({truth}, 0.1);
            REQUIRE(lines.size() == 1);
            REQUIRE_FALSE(lines[0].curve.isStraight());
            const vision::CurvePath path(lines[0].curve);
            CHECK(path.length() == Approx(300).margin(20));
            double farthest = 0;
            for (double along = -140; along <= 140; along += 10) {
                double nearest = 1e9;
                for (double way = 0; way <= path.length(); way += 1)
                    nearest = std::min(nearest, cv::norm(path.at(way) - pointOf(truth, along, 0)));
                farthest = std::max(farthest, nearest);
            }
            CHECK(farthest < 0.15 * 24);
            // It begins where the line is begun to be read.
            CHECK(cv::norm(path.at(0) - pointOf(truth, -150, 0)) < 12);
            const Cover cover = coverOf(lines[0], truth);
            CHECK(cover.covered > 0.93);
            CHECK(cover.surplus < 1.4);
        }
    const TrueLine apart_a{{250, 240}, 0, 200, 24, 60};  // an arch whose middle is missing
    const cv::Point2d onward = pointOf(apart_a, 100 + 30 + 60, 0);
    const cv::Point2d turn = readingOf(apart_a, 100 + 30 + 60);
    const TrueLine apart_b{onward, std::atan2(turn.y, turn.x) * 180 / CV_PI, 120, 24, 36};
    const auto joined = found({apart_a, apart_b});
    REQUIRE(joined.size() == 1);
    REQUIRE_FALSE(joined[0].curve.isStraight());
    CHECK(coverOf(joined[0], apart_a).covered > 0.93);
    CHECK(coverOf(joined[0], apart_b).covered > 0.93);
    const TrueLine hardly{{320, 240}, 0, 200, 24, 5};  // sags by a tenth of a capital
    const auto lines = found({hardly});
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].curve.isStraight());
}

TEST_CASE("A surer answer gives a surer line, and one without a core none", "[vision][finder]")
{
    CHECK(found({}).empty());
    CHECK(found({}, 0.5).empty());
    vision::FinderTable table = drawnTable(picture, {{{320, 240}, 0, 200, 20}});
    const double sure = vision::linesOf(table).at(0).line.certainty;
    table.core *= 0.3;
    CHECK(vision::linesOf(table).at(0).line.certainty < sure);
    table.core -= 5;
    CHECK(vision::linesOf(table).empty());
}

TEST_CASE("A network that tells no turns still gives those of long lines", "[vision][finder]")
{
    vision::FinderTable table = drawnTable(picture, {{{320, 240}, 60, 200, 20}});
    table.cosine *= 0.05;
    table.sine *= 0.05;
    CHECK(turnApart(turnOf(vision::linesOf(table).at(0).line), 60) < 3);
}

TEST_CASE("A table that is none is refused", "[vision][finder]")
{
    vision::FinderTable table = drawnTable(picture, {});
    CHECK_THROWS_AS(vision::linesOf(table, {.from = 0}), std::invalid_argument);
    CHECK_THROWS_AS(vision::linesOf(table, {.peak = 2}), std::invalid_argument);
    table.sine = table.sine.rowRange(1, 9);
    CHECK_THROWS_AS(vision::linesOf(table), std::invalid_argument);
    CHECK(vision::linesOf({cv::Mat(0, 0, CV_32FC1), cv::Mat(0, 0, CV_32FC1),
                           cv::Mat(0, 0, CV_32FC1), cv::Mat(0, 0, CV_32FC1)})
              .empty());
}
