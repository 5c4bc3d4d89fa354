// The finder network and the one that tells the way up, on made pictures.

#include "vision/stamp_finder.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <opencv2/imgproc.hpp>

#include "tests/support/temporary_folder.h"
#include "tests/support/weights_sums.h"
#include "tests/vision/stamp_scene.h"
#include "vision/finder_search.h"
#include "vision/line_reader.h"
#include "vision/network_crop.h"
#include "vision/upright.h"
#include "vision/weights_error.h"

namespace {

const std::filesystem::path networks = WEFTMARK_SOURCE_DIR "/vision/weights";

cv::Mat greyScene(double turn_deg)
{
    cv::Mat grey;
    cv::cvtColor(photoOf(stampScene({"SALTMERE WORKS", "1938"}, turn_deg)).pixels, grey,
                 cv::COLOR_BGR2GRAY);
    return grey;
}

double furthestLevel(const vision::FinderTable& a, const vision::FinderTable& b)
{
    return std::max(
        {cv::norm(a.core, b.core, cv::NORM_INF), cv::norm(a.log_height, b.log_height, cv::NORM_INF),
         cv::norm(a.cosine, b.cosine, cv::NORM_INF), cv::norm(a.sine, b.sine, cv::NORM_INF)});
}

// A photo of bare ground with a drawn stamp somewhere on it, its capitals so high.
struct WidePhoto {
    vision::Photo photo;
    cv::Rect stamp;
};

WidePhoto widePhoto(cv::Size size, const cv::Point& at, double capital_px)
{
    const synthetic::DrawnPhoto drawn =
        synthetic::drawPhoto(stampScene({"SALTMERE WORKS", "1938"}, 0));
    const synthetic::StampTruth& truth = drawn.stamps.front();
    const double scale = capital_px / truth.letter_px;
    cv::Mat small;
    cv::resize(drawn.pixels, small, {}, scale, scale, scale < 1 ? cv::INTER_AREA : cv::INTER_CUBIC);
    WidePhoto wide;
    wide.photo.pixels = cv::Mat(size, CV_8UC3, cv::mean(small));
    small.copyTo(wide.photo.pixels(cv::Rect(at, small.size())));
    const cv::Rect2f box =
        cv::boundingRect(std::vector<cv::Point2f>(truth.outline.begin(), truth.outline.end()));
    const auto px = [&](float of) { return cvRound(of * scale); };
    wide.stamp = {at.x + px(box.x), at.y + px(box.y), px(box.width), px(box.height)};
    return wide;
}

double sharedWith(const vision::StampOutline& outline, const cv::Rect& box)
{
    const cv::Rect found =
        cv::boundingRect(std::vector<cv::Point2f>(outline.corners.begin(), outline.corners.end()));
    return static_cast<double>((found & box).area()) / (found | box).area();
}

}  // namespace

TEST_CASE("Pictures of two sizes in turn are answered as by a fresh finder network",
          "[vision][finder][network]")
{
    vision::FinderNetwork network(networks);
    const cv::Mat whole = greyScene(10), part = whole(cv::Rect(150, 180, 500, 233)).clone();
    const cv::Mat original = whole.clone();
    network.look(part);
    const vision::FinderTable second = network.look(whole), third = network.look(part);
    vision::FinderNetwork fresh(networks), fresh_too(networks);
    CHECK(furthestLevel(second, fresh.look(whole)) < 1e-3);
    CHECK(furthestLevel(third, fresh_too.look(part)) < 1e-3);
    CHECK(second.core.size() == cv::Size(200, 150));
    CHECK(third.core.size() == cv::Size(125, 59));
    double least = 0, most = 0;
    cv::minMaxLoc(second.core, &least, &most);
    CHECK(most > 1);  // not all zeros
    CHECK(cv::norm(whole, original, cv::NORM_INF) == 0);
    CHECK_THROWS_AS(network.look(cv::Mat()), std::invalid_argument);
    CHECK_THROWS_AS(network.look(cv::Mat(8, 8, CV_8UC3)), std::invalid_argument);
}

TEST_CASE("Light and contrast of the place make no difference to what the finder is shown",
          "[vision][finder]")
{
    const cv::Mat grey = greyScene(0);
    cv::Mat dim;
    grey.convertTo(dim, CV_8U, 0.5, 20);
    // Half as many levels: rounding alone makes them differ by a small part of a deviation.
    CHECK(cv::norm(vision::evenedOut(grey), vision::evenedOut(dim), cv::NORM_L1) /
              static_cast<double>(grey.total()) <
          0.05);
    CHECK(cv::norm(vision::evenedOut(cv::Mat(40, 30, CV_8UC1, cv::Scalar(90))), cv::NORM_INF) <
          1e-3);
    CHECK_THROWS_AS(vision::evenedOut(cv::Mat()), std::invalid_argument);
}

TEST_CASE("What the finder is shown is the difference from the mean around, in deviations",
          "[vision][finder]")
{
    const cv::Mat grey = greyScene(20), even = vision::evenedOut(grey);
    for (const cv::Point at : {cv::Point(400, 300), cv::Point(0, 0), cv::Point(799, 127),
                               cv::Point(13, 128), cv::Point(420, 599)}) {
        CAPTURE(at.x, at.y);
        cv::Mat around;  // 65 pixels square, the picture reflected beyond its edge
        cv::copyMakeBorder(grey, around, 32, 32, 32, 32, cv::BORDER_REFLECT_101);
        cv::Scalar mean, deviation;
        cv::meanStdDev(around(cv::Rect(at, cv::Size(65, 65))), mean, deviation);
        const double wanted = (grey.at<uchar>(at) - mean[0]) / std::max(deviation[0], 0.02 * 255);
        // Sums of squares are kept in single precision.
        CHECK(even.at<float>(at) == Approx(wanted).margin(0.01));
    }
}

TEST_CASE("Letters 12 px high are found in a photo of 24 megapixels", "[vision][finder][network]")
{
    const WidePhoto wide = widePhoto({6000, 4000}, {3700, 1900}, 12);
    vision::StampFinder finder(networks);
    const auto stamps = finder.find(wide.photo);
    REQUIRE_FALSE(stamps.empty());
    CHECK(sharedWith(stamps.front(), wide.stamp) > 0.6);
    CHECK(stamps.front().lines.size() == 2);
}

TEST_CASE("A mark that fills the picture is found", "[vision][finder][network]")
{
    const WidePhoto drawn = widePhoto({800, 600}, {0, 0}, 39);
    const cv::Rect around = drawn.stamp + cv::Size(30, 30) - cv::Point(15, 15);
    vision::Photo photo;
    cv::resize(drawn.photo.pixels(around), photo.pixels, {}, 7, 7, cv::INTER_CUBIC);
    vision::StampFinder finder(networks);
    const auto stamps = finder.find(photo);
    REQUIRE_FALSE(stamps.empty());
    CHECK(sharedWith(stamps.front(), {105, 105, 7 * drawn.stamp.width, 7 * drawn.stamp.height}) >
          0.6);
    CHECK(stamps.front().lines.size() == 2);
}

TEST_CASE("An arched line is found with its course and read through it",
          "[vision][finder][network]")
{
    synthetic::SceneOptions scene = stampScene({"SALTMERE WORKS", "1938"}, 15);
    scene.stamps.front().text.arch_deg = 100;
    const vision::Photo photo = photoOf(scene);
    vision::StampFinder finder(networks);
    const auto stamps = finder.find(photo);
    REQUIRE(stamps.size() == 1);
    REQUIRE(stamps[0].lines.size() == 2);
    REQUIRE(stamps[0].curves.size() == 2);
    CHECK_FALSE(stamps[0].curves[0].isStraight());
    CHECK(stamps[0].curves[1].isStraight());
    vision::LineReader reader(networks);
    const auto read = vision::readRightWayUp(vision::rectifyStamp(photo, stamps[0]), reader);
    REQUIRE(read.reading.lines.size() == 2);
    CHECK(models::plainText(read.reading.lines[0]) == "SALTMERE WORKS");
    CHECK(models::plainText(read.reading.lines[1]) == "1938");
}

TEST_CASE("Networks that cannot be used are refused in a sentence that says what that costs",
          "[vision][finder][network]")
{
    using Catch::Contains;
    const support::TemporaryFolder folder;
    CHECK_THROWS_WITH(vision::StampFinder(folder.path()),
                      Contains("finder.onnx.gz is missing") && Contains("by their letters"));
    CHECK_THROWS_WITH(vision::UprightNetwork(folder.path()),
                      Contains("upright.onnx.gz is missing") && Contains("by reading"));
    const auto finder = folder.path() / "finder.onnx.gz",
               upright = folder.path() / "upright.onnx.gz";
    std::ofstream(finder) << "no network";
    support::listSums(folder.path());
    CHECK_THROWS_WITH(vision::StampFinder(folder.path()), Contains("is no network"));
    std::filesystem::copy_file(networks / "upright.onnx.gz", finder,
                               std::filesystem::copy_options::overwrite_existing);
    support::listSums(folder.path());
    CHECK_THROWS_AS(vision::StampFinder(folder.path()), vision::WeightsError);
    std::filesystem::copy_file(networks / "finder.onnx.gz", upright);
    support::listSums(folder.path());
    CHECK_THROWS_AS(vision::UprightNetwork(folder.path()), vision::WeightsError);
    std::filesystem::copy_file(networks / "SHA256SUMS", folder.path() / "SHA256SUMS",
                               std::filesystem::copy_options::overwrite_existing);
    CHECK_THROWS_WITH(vision::StampFinder(folder.path()), Contains("is damaged"));
}

TEST_CASE("A line upright and on its head are told apart, in crops of two sizes in turn",
          "[vision][upright][network]")
{
    vision::UprightNetwork network(networks);
    for (const std::string& text : {std::string("SALTMERE WORKS"), std::string("4 JULY 1936")}) {
        synthetic::SceneOptions scene = stampScene({text}, 0);
        const synthetic::DrawnPhoto drawn = synthetic::drawPhoto(scene);
        cv::Mat grey, over;
        cv::cvtColor(drawn.pixels, grey, cv::COLOR_BGR2GRAY);
        const auto& corners = drawn.stamps[0].lines[0].corners;
        const cv::Rect2d box =
            cv::boundingRect(std::vector<cv::Point2f>(corners.begin(), corners.end()));
        const cv::Mat crop = vision::networkCrop(grey, {box}).grey;
        cv::rotate(crop, over, cv::ROTATE_180);
        const double odds = network.logOdds(crop);
        CHECK(odds > 1);
        CHECK(network.logOdds(over) < -1);
        CHECK(vision::UprightNetwork(networks).logOdds(crop) == Approx(odds).margin(1e-3));
    }
    CHECK_THROWS_AS(network.logOdds(cv::Mat(30, 90, CV_8UC1)), std::invalid_argument);
}
