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

constexpr std::size_t kMostBytes = 440'000;

double tenths(double value)
{
    return std::round(10 * value) / 10;
}

nlohmann::json truthOf(const SampleScene& sample, const synthetic::DrawnPhoto& photo)
{
    nlohmann::json stamps = nlohmann::json::array();
    for (std::size_t i = 0; i < photo.stamps.size(); ++i) {
        nlohmann::json outline = nlohmann::json::array();
        for (const cv::Point2f& corner : photo.stamps[i].in_sight)
            outline.push_back({tenths(corner.x), tenths(corner.y)});
        stamps.push_back({{"outline", outline},
                          {"up_deg", tenths(photo.stamps[i].up_deg)},
                          {"lines", sample.typed.at(i)}});
    }
    return {{"made", true},
            {"item_type", sample.item_type},
            {"maker_id", sample.maker_id},
            {"edtf", sample.edtf},
            {"stamps", stamps}};
}

// As good a JPEG as its size allows.
std::vector<unsigned char> smallEnough(const cv::Mat& pixels)
{
    std::vector<unsigned char> bytes;
    for (int quality = 92; quality >= 60; quality -= 2) {
        cv::imencode(".jpg", pixels, bytes,
                     {cv::IMWRITE_JPEG_QUALITY, quality, cv::IMWRITE_JPEG_OPTIMIZE, 1});
        if (bytes.size() <= kMostBytes)
            return bytes;
    }
    throw std::runtime_error("a sample does not come out small enough");
}

void write(const std::filesystem::path& file, const char* bytes, std::size_t count)
{
    std::ofstream stream(file, std::ios::binary);
    stream.write(bytes, static_cast<std::streamsize>(count));
    if (!stream)
        throw std::runtime_error("cannot write " + file.string());
}

}  // namespace

int main(int argc, char** argv)
{
    const std::filesystem::path folder = argc > 1 ? argv[1] : WEFTMARK_SOURCE_DIR "/sample_images";
    try {
        for (SampleScene sample : sampleScenes()) {
            sample.scene.camera.jpeg_quality = 0;  // compressed once, here
            const synthetic::DrawnPhoto photo = synthetic::drawPhoto(sample.scene);
            const auto bytes = smallEnough(photo.pixels);
            const std::string truth = truthOf(sample, photo).dump(2) + "\n";
            write(folder / (sample.name + ".jpg"), reinterpret_cast<const char*>(bytes.data()),
                  bytes.size());
            write(folder / (sample.name + ".truth.json"), truth.data(), truth.size());
            std::cout << sample.name << ": " << bytes.size() / 1000 << " kB\n";
        }
    } catch (const std::exception& error) {
        std::cerr << error.what() << "\n";
        return 3;
    }
    return 0;
}
