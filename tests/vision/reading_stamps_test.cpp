#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <opencv2/imgproc.hpp>

#include "tests/vision/stamp_scene.h"
#include "vision/image_error.h"
#include "vision/locate.h"
#include "vision/single_line.h"
#include "vision/tesseract_reader.h"
#include "vision/upright.h"

namespace {

std::vector<models::Line> linesOf(const vision::Photo& photo, vision::TesseractReader& reader)
{
    std::vector<models::Line> lines;
    for (const auto& outline : vision::locateStamps(photo)) {
        const auto upright = vision::readRightWayUp(vision::rectifyStamp(photo, outline), reader);
        lines.insert(lines.end(), upright.reading.lines.begin(), upright.reading.lines.end());
    }
    return lines;
}

bool holds(const std::vector<models::Line>& lines, const std::string& text)
{
    return std::any_of(lines.begin(), lines.end(),
                       [&](const auto& line) { return models::plainText(line) == text; });
}

vision::EnhancedStamp enhancedWhole(const cv::Mat& pixels)
{
    vision::RectifiedStamp stamp;
    stamp.pixels = pixels;
    stamp.photo_from_rectified = cv::Matx33d::eye();
    return vision::enhanceStamp(stamp);
}

}  // namespace

TEST_CASE("A stamp on its head is read the right way up", "[vision][tesseract]")
{
    vision::TesseractReader reader;
    for (const double turn : {10.0, 190.0}) {
        CAPTURE(turn);
        const auto drawn = synthetic::drawPhoto(stampScene({"SALTMERE WORKS", "1938"}, turn));
        vision::Photo photo;
        photo.pixels = drawn.pixels;
        const auto stamps = vision::locateStamps(photo);
        REQUIRE_FALSE(stamps.empty());

        const auto upright =
            vision::readRightWayUp(vision::rectifyStamp(photo, stamps.front()), reader);

        CHECK(upright.enhanced.rectified.up_deg == Approx(turn).margin(3));
        CHECK(holds(upright.reading.lines, "SALTMERE WORKS"));
        CHECK(holds(upright.reading.lines, "1938"));
    }
}

TEST_CASE("Cells stand in order, under ink, with shares of at most one", "[vision][tesseract]")
{
    vision::TesseractReader reader;
    const auto lines = linesOf(photoOf(stampScene({"BRACKLOE 1938"}, 0)), reader);
    REQUIRE_FALSE(lines.empty());
    for (const models::Line& line : lines) {
        double left = -1;
        for (const models::Cell& cell : line.cells) {
            CHECK(cell.by == reader.name());
            CHECK(cell.right_px >= cell.left_px);
            CHECK(cell.left_px >= left);
            left = cell.left_px;
            double sum = 0;
            for (const models::Alternative& alternative : cell.alternatives)
                sum += alternative.certainty;
            CHECK(sum <= 1 + 1e-9);
        }
    }
}

TEST_CASE("Ink faded away is not read with certainty", "[vision][tesseract]")
{
    vision::TesseractReader reader;
    double fresh = 0, gone = 0;
    for (const auto& line : linesOf(photoOf(stampScene({"BRACKLOE 1938"}, 0, 0.1)), reader))
        fresh = std::max(fresh, models::lineCertainty(line));
    for (const auto& line : linesOf(photoOf(stampScene({"BRACKLOE 1938"}, 0, 0.97)), reader))
        gone = std::max(gone, models::lineCertainty(line));
    CHECK(fresh > 0.6);
    CHECK(gone < 0.5);
}

TEST_CASE("Bare cloth holds no line that is likelier than not", "[vision][tesseract]")
{
    vision::TesseractReader reader;
    for (const auto material : {synthetic::Material::Webbing, synthetic::Material::Canvas,
                                synthetic::Material::Twill, synthetic::Material::Leather}) {
        synthetic::SceneOptions scene = stampScene({"X"}, 0);
        scene.stamps.clear();
        scene.piece.material = material;
        for (const auto& line : linesOf(photoOf(scene), reader))
            CHECK(models::lineCertainty(line) < 0.5);
    }
}

TEST_CASE("Layers are the stamp's size with dark ink, whatever the ink was", "[vision][enhance]")
{
    cv::Mat dark(80, 300, CV_8UC3, cv::Scalar::all(200));
    cv::putText(dark, "WORKS", {20, 60}, cv::FONT_HERSHEY_SIMPLEX, 2, cv::Scalar::all(60), 6);
    const cv::Mat light = cv::Scalar::all(255) - dark;
    const cv::Mat original = dark.clone();

    const auto of_dark = enhancedWhole(dark);
    const auto of_light = enhancedWhole(light);

    CHECK_FALSE(of_dark.light_ink);
    CHECK(of_light.light_ink);
    CHECK(of_dark.layers.size() >= 4);
    for (const auto* stamp : {&of_dark, &of_light})
        for (const vision::Layer& layer : stamp->layers) {
            CAPTURE(layer.name);
            CHECK(layer.grey.size() == dark.size());
            CHECK(layer.grey.type() == CV_8UC1);
        }
    for (const char* name : {"flat", "contrast"}) {
        const cv::Mat& grey = of_light.layer(name);
        const cv::Mat ink = [&] {
            cv::Mat mask;
            cv::cvtColor(dark, mask, cv::COLOR_BGR2GRAY);
            return cv::Mat(mask < 100);
        }();
        CHECK(cv::mean(grey, ink)[0] + 40 < cv::mean(grey, ~ink)[0]);
    }
    CHECK(cv::norm(dark, original, cv::NORM_INF) == 0);
    CHECK_THROWS_AS(of_dark.layer("no such layer"), std::out_of_range);
    CHECK_THROWS_AS(vision::enhanceStamp(vision::RectifiedStamp{}), std::invalid_argument);
}

// Photographs that Debian's opencv-doc carries (samples of OpenCV's text module), transcribed by
// eye for this test.
TEST_CASE("Real photographs of OpenCV's documentation are read as by eye", "[vision][tesseract]")
{
    const std::filesystem::path folder = "/usr/share/doc/opencv-doc/examples/text";
    if (!std::filesystem::exists(folder)) {
        WARN("skipped: the package opencv-doc is not installed");
        return;
    }
    vision::TesseractReader reader;
    const auto sign = linesOf(vision::loadPhoto(folder / "scenetext01.jpg"), reader);
    CHECK(holds(sign, "NOTICE"));
    CHECK(holds(sign, "PARKING"));
    for (const auto& [file, text] :
         {std::pair{"scenetext_word01.jpg", "CHINA"}, {"scenetext_word02.jpg", "HERE"}}) {
        const vision::Photo photo = vision::loadPhoto(folder / file);
        const auto read = vision::readSingleLine(photo, reader);
        CAPTURE(file);
        CHECK(holds(read.reading.lines, text));
    }
}
