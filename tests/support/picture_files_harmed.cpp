#include "tests/support/picture_files_harmed.h"

#include <algorithm>

namespace picture_files {
namespace {

ExifBlock exifBlock()
{
    ExifBlock exif;
    exif.orientation = 7;
    exif.camera = {{0x010F, "Harbour Optics"}};
    exif.exposure = {{0x9003, "1998:05:01 12:30:00"}};
    exif.exposure_rationals = {{0x829A, 1, 125}};
    return exif;
}

cv::Mat noise(cv::Size size, int type, int most)
{
    cv::Mat picture(size, type);
    cv::RNG random(5);
    random.fill(picture, cv::RNG::UNIFORM, 0, most);
    return picture;
}

void addTiffs(std::vector<NamedFile>& files)
{
    const cv::Mat colour = noise({64, 48}, CV_8UC3, 256), deep = noise({32, 24}, CV_16UC3, 65536);
    const cv::Mat numbers = noise({64, 48}, CV_8UC1, 3), inks = noise({32, 24}, CV_8UC4, 256);
    const std::vector<cv::Vec3b> palette = {{0, 0, 0}, {9, 99, 199}, {255, 255, 255}};
    files.push_back({"TIFF", tiff({.samples = colour, .orientation = 6, .facts = exifBlock()})});
    files.push_back({"TIFF", tiff({.samples = deep, .tiled = true, .profile = linearProfile()})});
    files.push_back({"TIFF", tiff({.samples = colour, .planes_apart = true, .pages = 2})});
    files.push_back(
        {"TIFF", tiff({.samples = inks, .meaning = TiffMeaning::Inks, .profile = inkProfile()})});
    files.push_back(
        {"TIFF",
         tiff({.samples = numbers, .meaning = TiffMeaning::Palette, .palette_bgr = palette})});
}

}  // namespace

std::vector<NamedFile> soundFiles()
{
    const cv::Mat colour = noise({64, 48}, CV_8UC3, 256), deep = noise({32, 24}, CV_16UC3, 65536);
    const cv::Mat numbers = noise({64, 48}, CV_8UC1, 3), alpha = noise({40, 30}, CV_8UC4, 256);
    const std::vector<cv::Vec3b> palette = {{0, 0, 0}, {9, 99, 199}, {255, 255, 255}};
    const Bytes exif = exifBlock().bytes(), profile = linearProfile();
    const cv::Mat inks(16, 16, CV_8UC4, cv::Scalar(10, 20, 30, 40));
    std::vector<NamedFile> files = {
        {"JPEG", jpegWithExif(jpeg(colour), exif)},
        {"JPEG", jpegWithExif(progressiveJpeg(colour), exif)},
        {"JPEG", jpegWithProfile(cmykJpeg(inks, true), inkProfile())},
        {"PNG", pngWithExif(palettePng(numbers, palette, {0, 128}, true), exif)},
        {"PNG", pngWithProfile(png(deep), profile)},
        {"PNG", png(alpha)},
        {"WebP", webpWith(webp(colour), exif, profile)},
        {"WebP", webpWith(webp(alpha, false), exif, {})},
        {"WebP", webp(colour, false)},
        {"BMP", bmp({.pixels = colour})},
        {"BMP", bmp({.pixels = numbers, .bits = 4, .palette_bgr = palette, .from_top = true})},
        {"BMP", bmp({.pixels = alpha, .bits = 32, .profile = profile})},
    };
    addTiffs(files);
    if (canWriteHeic()) {
        files.push_back({"HEIC", heic(colour, 6, exif, profile)});
        files.push_back({"HEIC", heic(colour, 1)});
    }
    return files;
}

Bytes harmed(Bytes bytes, std::mt19937& random)
{
    const auto below = [&](std::size_t limit) {
        return std::uniform_int_distribution<std::size_t>(0, limit - 1)(random);
    };
    for (std::size_t changes = below(6); changes > 0; --changes) {
        const std::size_t range =
            below(2) == 0 ? std::min<std::size_t>(bytes.size(), 200) : bytes.size();
        bytes[below(range)] = static_cast<unsigned char>(below(256));
    }
    if (below(3) == 0)
        bytes.resize(1 + below(bytes.size()));
    return bytes;
}

}  // namespace picture_files
