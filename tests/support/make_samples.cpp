#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <stdexcept>

#include <nlohmann/json.hpp>
#include <opencv2/imgcodecs.hpp>

#include "tests/support/sample_scenes.h"

// Draws the demo's photographs again, each with its truth beside it.
namespace {

constexpr std::size_t most_bytes = 400'000;

double rounded(double value, int digits)
{
    const double scale = std::pow(10, digits);
    return std::round(scale * value) / scale;
}

nlohmann::json stampTruth(const SampleStamp& told, const synthetic::StampTruth& drawn)
{
    nlohmann::json outline = nlohmann::json::array();
    for (const cv::Point2f& corner : drawn.in_sight)
        outline.push_back({rounded(corner.x, 1), rounded(corner.y, 1)});
    nlohmann::json truth{{"outline", outline},
                         {"up_deg", rounded(drawn.up_deg, 1)},
                         {"lines", told.typed},
                         {"part", told.part},
                         {"letter_px", rounded(drawn.letter_px, 1)},
                         {"contrast", rounded(drawn.contrast, 3)},
                         {"lost", rounded(drawn.lost, 3)},
                         {"tilt_deg", rounded(tiltOf(drawn), 1)}};
    if (!told.maker_id.empty())
        truth["maker_id"] = told.maker_id;
    return truth;
}

nlohmann::json truthOf(const SampleScene& sample, const synthetic::DrawnPhoto& photo)
{
    nlohmann::json stamps = nlohmann::json::array();
    for (std::size_t i = 0; i < photo.stamps.size(); ++i)
        stamps.push_back(stampTruth(sample.stamps.at(i), photo.stamps[i]));
    return {{"made", true},
            {"level", folderOf(sample.level)},
            {"seed", sample.scene.seed},
            {"item_type", sample.item_type},
            {"maker_id", sample.maker_id},
            {"edtf", sample.edtf},
            {"stamps", stamps}};
}

// Letters of which less than half is left are written as doubtful, the others as clear.
void requireHonestTruth(const SampleStamp& told, const synthetic::StampTruth& drawn)
{
    std::ptrdiff_t worn = 0, doubtful = 0;
    for (const synthetic::LineTruth& line : drawn.lines)
        worn += std::count_if(line.letters.begin(), line.letters.end(), [](const auto& letter) {
            return letter.in_sight > 0.5 && letter.inked < 0.5;
        });
    for (const std::string& line : told.typed)
        doubtful += std::count(line.begin(), line.end(), '?');
    if (worn != doubtful)
        throw std::runtime_error(told.typed.at(0) + ": the scene writes " +
                                 std::to_string(doubtful) + " letters as doubtful, " +
                                 std::to_string(worn) + " are");
}

// What a person who sets the levels wants to see.
void tell(const SampleScene& sample, const synthetic::DrawnPhoto& photo)
{
    std::cout << folderOf(sample.level) << "/" << sample.name;
    for (const synthetic::StampTruth& stamp : photo.stamps) {
        std::cout << "; letters " << rounded(stamp.letter_px, 1) << " px, contrast "
                  << rounded(stamp.contrast, 2) << ", lost " << rounded(stamp.lost, 2) << ", tilt "
                  << rounded(tiltOf(stamp), 1);
        for (const synthetic::LineTruth& line : stamp.lines)
            for (const synthetic::LetterTruth& letter : line.letters)
                if (letter.inked < 0.5)
                    std::cout << ", " << letter.text << " " << rounded(letter.inked, 2);
    }
    std::cout << std::endl;
}

// As good a JPEG as its size allows.
std::vector<unsigned char> smallEnough(const cv::Mat& pixels)
{
    std::vector<unsigned char> bytes;
    for (int quality = 92; quality >= 60; quality -= 2) {
        cv::imencode(".jpg", pixels, bytes,
                     {cv::IMWRITE_JPEG_QUALITY, quality, cv::IMWRITE_JPEG_OPTIMIZE, 1});
        if (bytes.size() <= most_bytes)
            return bytes;
    }
    throw std::runtime_error("a sample does not come out small enough");
}

void writeSample(const std::filesystem::path& file, const char* bytes, std::size_t count)
{
    std::ofstream stream(file, std::ios::binary);
    stream.writeSample(bytes, static_cast<std::streamsize>(count));
    if (!stream)
        throw std::runtime_error("cannot writeSample " + file.string());
}

void make(SampleScene sample, const std::filesystem::path& samples)
{
    sample.scene.camera.jpeg_quality = 0;  // compressed once, here
    const synthetic::DrawnPhoto photo = synthetic::drawPhoto(sample.scene);
    tell(sample, photo);
    for (std::size_t i = 0; i < photo.stamps.size(); ++i)
        requireHonestTruth(sample.stamps.at(i), photo.stamps[i]);
    const auto bytes = smallEnough(photo.pixels);
    const std::string truth = truthOf(sample, photo).dump(2) + "\n";
    const std::filesystem::path folder = samples / folderOf(sample.level);
    std::filesystem::create_directories(folder);
    writeSample(folder / (sample.name + ".jpg"), reinterpret_cast<const char*>(bytes.data()),
                bytes.size());
    writeSample(folder / (sample.name + ".truth.json"), truth.data(), truth.size());
}

}  // namespace

// make_samples [FOLDER [NAME]]
int main(int argc, char** argv)
{
    const std::filesystem::path folder = argc > 1 ? argv[1] : WEFTMARK_SOURCE_DIR "/sample_images";
    try {
        for (const SampleScene& sample : sampleScenes())
            if (argc < 3 || sample.name == argv[2])
                make(sample, folder);
    } catch (const std::exception& error) {
        std::cerr << error.what() << "\n";
        return 3;
    }
    return 0;
}
