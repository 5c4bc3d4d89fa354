#include <random>

#include <catch2/catch.hpp>

#include "tests/support/picture_files.h"
#include "tests/support/temporary_folder.h"
#include "vision/image_error.h"
#include "vision/photo.h"

namespace {

using picture_files::Bytes;
using support::TemporaryFolder;

std::vector<Bytes> wholeFiles()
{
    cv::Mat colour(48, 64, CV_8UC3), indices(48, 64, CV_8UC1), deep(24, 32, CV_16UC3);
    cv::RNG random(5);
    random.fill(colour, cv::RNG::UNIFORM, 0, 255);
    random.fill(indices, cv::RNG::UNIFORM, 0, 3);
    random.fill(deep, cv::RNG::UNIFORM, 0, 65535);
    picture_files::ExifBlock exif;
    exif.orientation = 7;
    exif.camera = {{0x010F, "Harbour Optics"}};
    exif.exposure_rationals = {{0x829A, 1, 125}};
    const std::vector<cv::Vec3b> palette = {{0, 0, 0}, {9, 99, 199}, {255, 255, 255}};
    return {
        picture_files::jpegWithExif(picture_files::jpeg(colour), exif.bytes()),
        picture_files::jpegWithExif(picture_files::progressiveJpeg(colour), exif.bytes()),
        picture_files::cmykJpeg(cv::Mat(16, 16, CV_8UC4, cv::Scalar(10, 20, 30, 40)), true),
        picture_files::pngWithExif(picture_files::palettePng(indices, palette, {0, 128}, true),
                                   exif.bytes()),
        picture_files::png(deep),
    };
}

Bytes harmed(Bytes bytes, std::mt19937& random)
{
    const auto below = [&](std::size_t limit) {
        return std::uniform_int_distribution<std::size_t>(0, limit - 1)(random);
    };
    // Half of the flips go to the first bytes, where the headers are.
    for (std::size_t flips = below(6); flips > 0; --flips) {
        const std::size_t range =
            below(2) == 0 ? std::min<std::size_t>(bytes.size(), 200) : bytes.size();
        bytes[below(range)] = static_cast<unsigned char>(below(256));
    }
    if (below(3) == 0)
        bytes.resize(1 + below(bytes.size()));
    return bytes;
}

}  // namespace

TEST_CASE("Harmed bytes give a photo or a sentence, never a crash", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "harmed";
    std::mt19937 random(20250301);
    int loaded = 0, refused = 0;
    for (const Bytes& whole : wholeFiles())
        for (int round = 0; round < 400; ++round) {
            CAPTURE(round);
            picture_files::write(file, harmed(whole, random));
            try {
                const vision::Photo photo = vision::loadPhoto(file, {.max_megapixels = 2});
                REQUIRE(photo.pixels.type() == CV_8UC3);
                REQUIRE_FALSE(photo.pixels.empty());
                ++loaded;
            } catch (const vision::ImageError&) {
                ++refused;
            }
        }
    // Both ways are gone often, or the loop tests nothing.
    CHECK(loaded > 200);
    CHECK(refused > 200);
}
