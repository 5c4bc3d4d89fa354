// What both finders promise alike: the shapes of letters, and the network.

#include "vision/locate.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <opencv2/imgproc.hpp>

#include "tests/vision/stamp_scene.h"
#include "vision/stamp_finder.h"

namespace {

vision::StampFinder& finderWith(bool network)
{
    static vision::StampFinder by_shapes, by_network(WEFTMARK_SOURCE_DIR "/vision/weights");
    return network ? by_network : by_shapes;
}

double coveredShare(const vision::Quad& found, const synthetic::Quad& truth)
{
    const std::vector<cv::Point2f> a(found.begin(), found.end()), b(truth.begin(), truth.end());
    std::vector<cv::Point2f> common;
    return cv::intersectConvexConvex(a, b, common) / cv::contourArea(b);
}

// Two strips of cloth, each with a line close to the edge where they meet; `gap` rows of a dark
// table between them, and the lower one darkened by `shade`.
vision::Photo twoStrips(int gap, double shade)
{
    const auto drawn = synthetic::drawPhoto(stampScene({"SALTMERE WORKS"}, 0));
    const auto& corners = drawn.stamps.front().outline;
    const cv::Rect line =
        cv::boundingRect(std::vector<cv::Point2f>(corners.begin(), corners.end()));
    constexpr int hem = 8, beyond = 60;
    const cv::Mat upper = drawn.pixels.rowRange(line.y - beyond, line.br().y + hem);
    cv::Mat lower = drawn.pixels.rowRange(line.y - hem, line.br().y + beyond) * shade;
    const cv::Mat table(gap, upper.cols, upper.type(), cv::Scalar::all(30));
    vision::Photo photo;
    cv::vconcat(std::vector<cv::Mat>{upper, table, lower}, photo.pixels);
    return photo;
}

std::size_t mostLinesTogether(vision::StampFinder& finder, const vision::Photo& photo)
{
    std::size_t most = 0;
    for (const vision::StampOutline& stamp : finder.find(photo))
        most = std::max(most, stamp.lines.size());
    return most;
}

}  // namespace

TEST_CASE("A stamp is found at any angle, with its direction and its lines", "[vision][locate]")
{
    const bool network = GENERATE(false, true);
    CAPTURE(network);
    vision::StampFinder& finder = finderWith(network);
    for (const double turn : {0.0, 7.0, 45.0, 100.0, 250.0}) {
        CAPTURE(turn);
        const auto drawn = synthetic::drawPhoto(stampScene({"SALTMERE WORKS", "1938"}, turn));
        vision::Photo photo;
        photo.pixels = drawn.pixels;
        const cv::Mat original = photo.pixels.clone();

        const auto stamps = finder.find(photo);

        REQUIRE_FALSE(stamps.empty());
        const vision::StampOutline& best = stamps.front();
        // A line of 14 letters gives its direction to a fraction of a letter's height in its
        // length.
        CHECK(betweenDirections(best.up_deg, drawn.stamps.front().up_deg) < 2.5);
        CHECK(coveredShare(best.corners, drawn.stamps.front().outline) > 0.8);
        CHECK(best.lines.size() == 2);
        CHECK(best.score > 0.5);
        CHECK(cv::norm(photo.pixels, original, cv::NORM_INF) == 0);
    }
}

TEST_CASE("Two stamps far apart stay two", "[vision][locate]")
{
    const bool network = GENERATE(false, true);
    CAPTURE(network);
    vision::StampFinder& finder = finderWith(network);
    synthetic::SceneOptions scene = stampScene({"HARBOUR"}, 0);
    scene.stamps.front().across_px = -180;
    scene.stamps.push_back(scene.stamps.front());
    scene.stamps.back().text.lines = {"STORE 31"};
    scene.stamps.back().across_px = 180;
    scene.stamps.back().turn_deg = 25;

    const auto stamps = finder.find(photoOf(scene));

    const auto sure = std::count_if(stamps.begin(), stamps.end(),
                                    [](const auto& stamp) { return stamp.score > 0.5; });
    CHECK(sure == 2);
}

TEST_CASE("Lines on two pieces that lie edge to edge are never one stamp", "[vision][locate]")
{
    const bool network = GENERATE(false, true);
    CAPTURE(network);
    vision::StampFinder& finder = finderWith(network);
    CHECK(mostLinesTogether(finder, twoStrips(20, 1)) == 1);  // a gap shows
    CHECK(mostLinesTogether(finder, twoStrips(1, 0.5)) ==
          1);                                                // none does, but the cloth is another
    CHECK(mostLinesTogether(finder, twoStrips(1, 1)) == 2);  // one cloth
}

TEST_CASE("Nothing is found on plain colour, and odd pictures do no harm", "[vision][locate]")
{
    const bool network = GENERATE(false, true);
    CAPTURE(network);
    vision::StampFinder& finder = finderWith(network);
    for (const cv::Size size :
         {cv::Size(1, 1), cv::Size(3, 900), cv::Size(2500, 4), cv::Size(640, 480)}) {
        vision::Photo photo;
        photo.pixels = cv::Mat(size, CV_8UC3, cv::Scalar::all(127));
        CHECK(finder.find(photo).empty());
    }
}

TEST_CASE("No more lines and stamps are given than were asked for", "[vision][locate]")
{
    const bool network = GENERATE(false, true);
    CAPTURE(network);
    vision::StampFinder& finder = finderWith(network);
    const vision::Photo photo = photoOf(stampScene({"ONE LINE", "TWO LINES", "THREE"}, 0));
    vision::LocateOptions options;
    options.max_lines = 1;
    std::size_t lines = 0;
    for (const auto& stamp : finder.find(photo, options))
        lines += stamp.lines.size();
    CHECK(lines == 1);
    options.max_stamps = 0;
    CHECK_THROWS_AS(finder.find(photo, options), std::invalid_argument);
    options = {};
    options.min_score = 1.5;
    CHECK_THROWS_AS(finder.find(photo, options), std::invalid_argument);
    CHECK_THROWS_AS(finder.find(vision::Photo{}), std::invalid_argument);
}
