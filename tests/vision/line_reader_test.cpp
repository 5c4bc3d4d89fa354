#include "vision/line_reader.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <opencv2/imgproc.hpp>

#include "tests/support/temporary_folder.h"
#include "tests/support/weights_sums.h"
#include "tests/vision/stamp_scene.h"
#include "vision/upright.h"
#include "vision/weights_error.h"

namespace {

const std::filesystem::path weights = WEFTMARK_SOURCE_DIR "/vision/weights";

cv::Mat noisyCrop(int width)
{
    cv::Mat crop(vision::LineNetwork::height_px, width, CV_8UC1);
    cv::RNG dice(static_cast<std::uint64_t>(width));
    dice.fill(crop, cv::RNG::NORMAL, 140, 25);
    cv::putText(crop, "MARK 1938", {12, 36}, cv::FONT_HERSHEY_DUPLEX, 0.9, cv::Scalar(50), 2);
    return crop;
}

// A copy of the project's weights, to be harmed.
std::filesystem::path copiedWeights(const support::TemporaryFolder& folder)
{
    for (const auto& entry : std::filesystem::directory_iterator(weights))
        std::filesystem::copy(entry.path(), folder.path() / entry.path().filename());
    return folder.path();
}

}  // namespace

TEST_CASE("Crops of two widths in turn are answered as by a fresh network", "[vision][network]")
{
    vision::LineNetwork network(weights);
    const cv::Mat narrow = noisyCrop(220), wide = noisyCrop(530);
    network.logShares(narrow);
    const cv::Mat second = network.logShares(wide);
    const cv::Mat third = network.logShares(narrow);
    vision::LineNetwork fresh(weights), fresh_too(weights);
    CHECK(cv::norm(second, fresh.logShares(wide), cv::NORM_INF) < 1e-3);
    CHECK(cv::norm(third, fresh_too.logShares(narrow), cv::NORM_INF) < 1e-3);
    CHECK(second.rows > third.rows);
    CHECK(second.cols == network.classes().count());
}

TEST_CASE("A plain line is read, either polarity, its cells under its letters", "[vision][network]")
{
    vision::LineReader reader(weights);
    for (const bool light : {false, true}) {
        CAPTURE(light);
        vision::Photo photo = photoOf(stampScene({"SALTMERE WORKS"}, 0));
        if (light)
            photo.pixels = cv::Scalar::all(255) - photo.pixels;
        const auto stamps = vision::locateStamps(photo);
        REQUIRE_FALSE(stamps.empty());
        const auto upright =
            vision::readRightWayUp(vision::rectifyStamp(photo, stamps.front()), reader);
        REQUIRE(upright.reading.lines.size() == 1);
        const models::Line& line = upright.reading.lines.front();
        CHECK(models::plainText(line) == "SALTMERE WORKS");
        CHECK(upright.reading.weights_sha256.size() == 64);
        double before = -1e9;
        for (const models::Cell& cell : line.cells) {
            CHECK(cell.by == "line-reader");
            CHECK(cell.left_px >= before - 0.01);
            CHECK(cell.right_px > cell.left_px);
            before = cell.left_px;
            double sum = 0;
            for (const models::Alternative& alternative : cell.alternatives)
                sum += alternative.certainty;
            CHECK(sum <= 1 + 1e-9);
        }
    }
}

TEST_CASE("Weights that cannot be used are refused in a sentence that names the file",
          "[vision][network]")
{
    const support::TemporaryFolder folder;
    const auto copy = copiedWeights(folder);
    const auto network = copy / "line_reader.onnx.gz";

    const auto size = std::filesystem::file_size(network);
    std::filesystem::resize_file(network, size / 2);
    CHECK_THROWS_WITH(vision::LineReader(copy), Catch::Contains("line_reader.onnx.gz is damaged"));
    support::listSums(copy);  // then trying it tells
    CHECK_THROWS_WITH(vision::LineReader(copy),
                      Catch::Contains("line_reader.onnx.gz is no network"));
    std::filesystem::resize_file(network, 0);
    CHECK_THROWS_WITH(vision::LineReader(copy), Catch::Contains("is empty"));
    std::filesystem::remove(network);
    CHECK_THROWS_WITH(vision::LineReader(copy), Catch::Contains("is missing"));
    std::filesystem::create_directory(network);
    CHECK_THROWS_WITH(vision::LineReader(copy), Catch::Contains("no file"));
    std::filesystem::remove(network);

    std::filesystem::copy(weights / "line_reader.onnx.gz", network);
    std::ofstream(copy / "characters.txt") << "A\nB\nC\ntraces\nlost\n";
    support::listSums(copy);
    CHECK_THROWS_WITH(vision::LineReader(copy), Catch::Contains("other characters"));
    std::ofstream(copy / "characters.txt") << "lost\ntraces\nC\nB\nA\n";
    support::listSums(copy);
    CHECK_THROWS_WITH(vision::LineReader(copy), Catch::Contains("does not list"));
    std::filesystem::remove(copy / "SHA256SUMS");
    CHECK_THROWS_WITH(vision::LineReader(copy), Catch::Contains("cannot be checked"));
    std::filesystem::remove(copy / "characters.txt");
    CHECK_THROWS_WITH(vision::LineReader(copy), Catch::Contains("characters.txt"));
}
