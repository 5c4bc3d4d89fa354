#include <algorithm>
#include <fstream>
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <opencv2/imgproc.hpp>

#include "tests/support/sample_scenes.h"
#include "vision/photo.h"

namespace {

const std::filesystem::path kFolder = WEFTMARK_SOURCE_DIR "/sample_images";

std::string textOf(const std::filesystem::path& file)
{
    std::ifstream stream(file);
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
}

nlohmann::json truthOf(const SampleScene& sample)
{
    return nlohmann::json::parse(textOf(kFolder / (sample.name + ".truth.json")));
}

std::string beforeGap(const std::string& typed)
{
    return typed.substr(0, typed.find('['));
}

}  // namespace

TEST_CASE("Every sample is a small photograph with its truth", "[vision][samples]")
{
    for (const SampleScene& sample : sampleScenes()) {
        CAPTURE(sample.name);
        const auto file = kFolder / (sample.name + ".jpg");
        const vision::Photo photo = vision::loadPhoto(file);
        CHECK(photo.warnings.empty());
        CHECK(photo.pixels.size() == cv::Size(1400, 1050));
        CHECK(std::filesystem::file_size(file) <= 450'000);

        const nlohmann::json truth = truthOf(sample);
        CHECK(truth.at("made") == true);
        CHECK(truth.at("maker_id") == sample.maker_id);
        CHECK(truth.at("item_type") == sample.item_type);
        CHECK(truth.at("edtf") == sample.edtf);
        REQUIRE(truth.at("stamps").size() == sample.typed.size());
        for (std::size_t i = 0; i < sample.typed.size(); ++i) {
            const auto& stamp = truth.at("stamps")[i];
            CHECK(stamp.at("lines") == sample.typed[i]);
            CHECK(stamp.at("up_deg") >= 0);
            CHECK(stamp.at("up_deg") < 360);
            std::vector<cv::Point2f> outline;
            for (const auto& corner : stamp.at("outline"))
                outline.emplace_back(corner[0].get<float>(), corner[1].get<float>());
            REQUIRE(outline.size() == 4);
            CHECK(cv::isContourConvex(outline));
            CHECK(cv::contourArea(outline, true) > 0);  // clockwise as one sees it, y down
            for (const cv::Point2f& corner : outline)
                CHECK(cv::Rect2f(0, 0, 1400, 1050).contains(corner));
        }
    }
}

TEST_CASE("Every sample's marks are in the demo register", "[vision][samples]")
{
    const std::string makers = textOf(WEFTMARK_SOURCE_DIR "/models/register/makers.csv");
    const std::string types = textOf(WEFTMARK_SOURCE_DIR "/models/register/item_types.csv");
    std::istringstream marks(textOf(WEFTMARK_SOURCE_DIR "/models/register/marks.csv"));
    std::vector<std::string> rows;
    for (std::string row; std::getline(marks, row);)
        rows.push_back(row);
    for (const SampleScene& sample : sampleScenes()) {
        CAPTURE(sample.name);
        CHECK(makers.find("\n" + sample.maker_id + ",") != std::string::npos);
        CHECK(types.find("\n" + sample.item_type + ",") != std::string::npos);
        // The first line begins with a mark of the maker, or is the part of one that can be seen.
        const std::string line = beforeGap(sample.typed[0][0]);
        const bool known = std::any_of(rows.begin(), rows.end(), [&](const std::string& row) {
            if (!row.starts_with(sample.maker_id + ","))
                return false;
            const std::size_t start = sample.maker_id.size() + 1;
            const std::string mark = row.substr(start, row.find(',', start) - start);
            return line.starts_with(mark) || mark.starts_with(line);
        });
        CHECK(known);
    }
}

TEST_CASE("A sample is what its scene draws", "[vision][samples]")
{
    const SampleScene sample = sampleScenes().at(1);
    const synthetic::DrawnPhoto drawn = synthetic::drawPhoto(sample.scene);
    const vision::Photo photo = vision::loadPhoto(kFolder / (sample.name + ".jpg"));
    REQUIRE(drawn.pixels.size() == photo.pixels.size());
    // Two JPEG qualities and another machine's rounding stay far below a change of seed or scene,
    // which moves every thread (about 15 levels).
    const double mean_difference = cv::norm(drawn.pixels, photo.pixels, cv::NORM_L1) /
                                   static_cast<double>(drawn.pixels.total() * 3);
    CHECK(mean_difference < 5);
}
