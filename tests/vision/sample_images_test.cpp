#include <algorithm>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <opencv2/imgproc.hpp>

#include "tests/support/sample_scenes.h"
#include "vision/photo.h"

namespace {

const std::filesystem::path folder = WEFTMARK_SOURCE_DIR "/sample_images";

std::string textOf(const std::filesystem::path& file)
{
    std::ifstream stream(file);
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
}

std::filesystem::path fileOf(const SampleScene& sample, const std::string& ending)
{
    return folder / folderOf(sample.level) / (sample.name + ending);
}

nlohmann::json truthOf(const SampleScene& sample)
{
    return nlohmann::json::parse(textOf(fileOf(sample, ".truth.json")));
}

// The part of a typed line that can be seen, without the signs of doubt.
std::string lettersSeen(std::string typed)
{
    typed = typed.substr(0, typed.find('['));
    typed.erase(std::remove(typed.begin(), typed.end(), '?'), typed.end());
    return typed;
}

// The makers of the register one of whose marks begins the line, or is begun by it.
std::set<std::string> makersSigning(const std::string& line)
{
    std::istringstream marks(textOf(WEFTMARK_SOURCE_DIR "/models/register/marks.csv"));
    std::set<std::string> makers;
    std::string row;
    std::getline(marks, row);  // the header
    while (std::getline(marks, row)) {
        const std::size_t comma = row.find(',');
        const std::string mark = row.substr(comma + 1, row.find(',', comma + 1) - comma - 1);
        if (line.starts_with(mark) || mark.starts_with(line))
            makers.insert(row.substr(0, comma));
    }
    return makers;
}

void checkStamp(const nlohmann::json& stamp, cv::Size photo)
{
    CHECK(stamp.at("up_deg") >= 0);
    CHECK(stamp.at("up_deg") < 360);
    std::vector<cv::Point2f> outline;
    for (const auto& corner : stamp.at("outline"))
        outline.emplace_back(corner[0].get<float>(), corner[1].get<float>());
    REQUIRE(outline.size() == 4);
    CHECK(cv::isContourConvex(outline));
    CHECK(cv::contourArea(outline, true) > 0);  // clockwise as one sees it, y down
    for (const cv::Point2f& corner : outline)
        CHECK(cv::Rect2f({}, cv::Size2f(photo)).contains(corner));
}

}  // namespace

TEST_CASE("Every sample is a small photograph with its truth", "[vision][samples]")
{
    for (const SampleScene& sample : sampleScenes()) {
        CAPTURE(sample.name);
        const vision::Photo photo = vision::loadPhoto(fileOf(sample, ".jpg"));
        CHECK(photo.warnings.empty());
        CHECK(photo.pixels.size() == sample.scene.size_px);
        const nlohmann::json truth = truthOf(sample);
        CHECK(truth.at("made") == true);
        CHECK(truth.at("level") == folderOf(sample.level));
        CHECK(truth.at("seed") == sample.scene.seed);
        CHECK(truth.at("maker_id") == sample.maker_id);
        CHECK(truth.at("item_type") == sample.item_type);
        CHECK(truth.at("edtf") == sample.edtf);
        REQUIRE(truth.at("stamps").size() == sample.stamps.size());
        for (std::size_t i = 0; i < sample.stamps.size(); ++i) {
            CHECK(truth.at("stamps")[i].at("lines") == sample.stamps[i].typed);
            CHECK(truth.at("stamps")[i].at("part") == sample.stamps[i].part);
            checkStamp(truth.at("stamps")[i], photo.pixels.size());
        }
    }
}

TEST_CASE("There are eight samples of each level and eight without a stamp, at most 12 MB",
          "[vision][samples]")
{
    std::map<std::string, int> counts;
    std::uintmax_t bytes = 0;
    std::set<std::uint32_t> seeds;
    std::set<std::string> expected, found;
    for (const SampleScene& sample : sampleScenes()) {
        ++counts[folderOf(sample.level)];
        seeds.insert(sample.scene.seed);
        expected.insert(fileOf(sample, ".jpg").string());
        expected.insert(fileOf(sample, ".truth.json").string());
        CHECK(sample.stamps.empty() == (sample.level == SampleLevel::NotStamps));
        CHECK(sample.stamps.size() == sample.scene.stamps.size());
    }
    CHECK(counts ==
          std::map<std::string, int>{{"easy", 8}, {"hard", 8}, {"medium", 8}, {"not_stamps", 8}});
    CHECK(seeds.size() == 32);
    for (const auto& [level, count] : counts)
        for (const auto& entry : std::filesystem::directory_iterator(folder / level)) {
            found.insert(entry.path().string());
            bytes += entry.file_size();
        }
    CHECK(found == expected);
    CHECK(bytes <= 12'000'000);
}

TEST_CASE("Every sample is as hard as its level says", "[vision][samples]")
{
    for (const SampleScene& sample : sampleScenes()) {
        if (sample.level == SampleLevel::NotStamps)
            continue;
        CAPTURE(sample.name);
        const LevelNumbers level = numbersOf(sample.level);
        const nlohmann::json stamp = truthOf(sample).at("stamps").at(0);
        CHECK(level.letter_px.holds(stamp.at("letter_px")));
        CHECK(level.contrast.holds(stamp.at("contrast")));
        CHECK(level.lost.holds(stamp.at("lost")));
        CHECK(level.tilt_deg.holds(stamp.at("tilt_deg")));
        CHECK(level.lines.holds(static_cast<double>(stamp.at("lines").size())));
    }
    CHECK_THROWS_AS(numbersOf(SampleLevel::NotStamps), std::invalid_argument);
}

TEST_CASE("Every sample's marks are in the demo register, save the stranger's", "[vision][samples]")
{
    const std::string makers = textOf(WEFTMARK_SOURCE_DIR "/models/register/makers.csv");
    const std::string types = textOf(WEFTMARK_SOURCE_DIR "/models/register/item_types.csv");
    int strangers = 0, fittings = 0;
    for (const SampleScene& sample : sampleScenes()) {
        CAPTURE(sample.name);
        if (sample.level == SampleLevel::NotStamps)
            continue;
        CHECK(types.find("\n" + sample.item_type + ",") != std::string::npos);
        const auto signing = makersSigning(lettersSeen(sample.stamps[0].typed[0]));
        if (sample.maker_id.empty()) {
            ++strangers;
            CHECK(signing.empty());
            continue;
        }
        CHECK(makers.find("\n" + sample.maker_id + ",") != std::string::npos);
        CHECK(signing.count(sample.maker_id) == 1);
        for (const SampleStamp& stamp : sample.stamps)
            if (stamp.part == "fitting") {
                ++fittings;
                CHECK(stamp.maker_id != sample.maker_id);
                CHECK(makersSigning(stamp.typed[0]).count(stamp.maker_id) == 1);
            }
    }
    CHECK(strangers == 1);
    CHECK(fittings == 1);
}

TEST_CASE("A sample is what its scene draws, and measures as its truth says", "[vision][samples]")
{
    const std::vector<SampleScene> samples = sampleScenes();
    for (const std::size_t which : {8U, 17U, 23U}) {
        const SampleScene& sample = samples.at(which);
        CAPTURE(sample.name);
        const synthetic::DrawnPhoto drawn = synthetic::drawPhoto(sample.scene);
        const vision::Photo photo = vision::loadPhoto(fileOf(sample, ".jpg"));
        REQUIRE(drawn.pixels.size() == photo.pixels.size());
        // Two JPEG qualities and another machine's rounding stay far below a change of seed or
        // scene, which moves every thread (about 15 levels).
        const double mean_difference = cv::norm(drawn.pixels, photo.pixels, cv::NORM_L1) /
                                       static_cast<double>(drawn.pixels.total() * 3);
        CHECK(mean_difference < 5);
        const nlohmann::json stamp = truthOf(sample).at("stamps").at(0);
        const synthetic::StampTruth& truth = drawn.stamps.at(0);
        // Measured once before and once after a JPEG's loss.
        CHECK(stamp.at("contrast") == Approx(truth.contrast).margin(0.02));
        CHECK(stamp.at("lost") == Approx(truth.lost).margin(0.02));
        CHECK(stamp.at("letter_px") == Approx(truth.letter_px).margin(0.2));
        CHECK(stamp.at("tilt_deg") == Approx(tiltOf(truth)).margin(0.1));
    }
}
