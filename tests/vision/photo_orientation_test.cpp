#include <array>
#include <functional>

#include <catch2/catch.hpp>

#include "tests/support/picture_files.h"
#include "tests/support/temporary_folder.h"
#include "vision/photo.h"

namespace {

using support::TemporaryFolder;
using Matrix = std::vector<std::vector<int>>;

// What is to be seen when [[1,2,3],[4,5,6]] is stored with each orientation: Exif 2.2 (JEITA
// CP-3451), tag Orientation (0x0112), section 4.6.4.
const std::array<Matrix, 9> seen = {{
    {},
    {{1, 2, 3}, {4, 5, 6}},
    {{3, 2, 1}, {6, 5, 4}},
    {{6, 5, 4}, {3, 2, 1}},
    {{4, 5, 6}, {1, 2, 3}},
    {{1, 4}, {2, 5}, {3, 6}},
    {{4, 1}, {5, 2}, {6, 3}},
    {{6, 3}, {5, 2}, {4, 1}},
    {{3, 6}, {2, 5}, {1, 4}},
}};

constexpr int level_step = 40;

// A matrix as a grey picture, each value a square of `side` pixels.
cv::Mat squares(const Matrix& values, int side)
{
    const auto rows = static_cast<int>(values.size()), columns = static_cast<int>(values[0].size());
    cv::Mat bgr(rows * side, columns * side, CV_8UC3);
    for (int row = 0; row < rows; ++row)
        for (int column = 0; column < columns; ++column)
            bgr(cv::Rect(column * side, row * side, side, side)) = cv::Scalar::all(
                level_step *
                values[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)]);
    return bgr;
}

picture_files::Bytes exifSaying(int orientation)
{
    picture_files::ExifBlock block;
    block.orientation = orientation;
    return block.bytes();
}

struct Format {
    const char* name;
    int side;  // of a square; that of the codec's blocks where levels would run into each other
    int most_levels;  // that a pixel may be away
    std::function<picture_files::Bytes(const cv::Mat& stored, int orientation)> bytes;
};

picture_files::Bytes tiffSaying(const cv::Mat& stored, int orientation, bool tiled, bool deep)
{
    picture_files::TiffPicture picture;
    stored.convertTo(picture.samples, deep ? CV_16U : CV_8U, deep ? 257 : 1);
    picture.orientation = orientation;
    picture.tiled = tiled;
    picture.rows_a_strip = 1;
    return picture_files::tiff(picture);
}

std::vector<Format> formats()
{
    using namespace picture_files;
    return {
        {"JPEG", 16, 1,
         [](const cv::Mat& stored, int orientation) {
             return jpegWithExif(jpeg(stored), exifSaying(orientation));
         }},
        {"JPEG", 16, 1,
         [](const cv::Mat& stored, int orientation) {
             return jpegWithExif(progressiveJpeg(stored), exifSaying(orientation));
         }},
        {"PNG", 1, 0,
         [](const cv::Mat& stored, int orientation) {
             return pngWithExif(png(stored), exifSaying(orientation));
         }},
        {"TIFF", 1, 0,
         [](const cv::Mat& stored, int orientation) {
             return tiffSaying(stored, orientation, false, false);
         }},
        {"TIFF", 11, 0,
         [](const cv::Mat& stored, int orientation) {
             return tiffSaying(stored, orientation, true, false);
         }},
        {"TIFF", 11, 0,
         [](const cv::Mat& stored, int orientation) {
             return tiffSaying(stored, orientation, true, true);
         }},
        {"WebP", 1, 0,
         [](const cv::Mat& stored, int orientation) {
             return webpWith(webp(stored), exifSaying(orientation), {});
         }},
        {"WebP", 16, 3,  // brightness is stored in 219 levels, and blocks are smoothed together
         [](const cv::Mat& stored, int orientation) {
             return webpWith(webp(stored, false), exifSaying(orientation), {});
         }},
    };
}

double furthestOff(const cv::Mat& a, const cv::Mat& b)
{
    return a.size() == b.size() ? cv::norm(a, b, cv::NORM_INF) : 1000;
}

}  // namespace

TEST_CASE("A picture is turned upright exactly once, every pixel", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "turned";
    for (const Format& format : formats())
        for (int orientation = 1; orientation <= 8; ++orientation) {
            CAPTURE(format.name, format.side, orientation);
            picture_files::write(file, format.bytes(squares(seen[1], format.side), orientation));

            const vision::Photo photo = vision::loadPhoto(file);

            CHECK(photo.format == format.name);
            CHECK(photo.exif_orientation == orientation);
            CHECK(furthestOff(photo.pixels, squares(seen[static_cast<std::size_t>(orientation)],
                                                    format.side)) <= format.most_levels);
        }
}

TEST_CASE("A HEIC turns itself, and its Exif does not turn it again", "[vision][photo]")
{
    if (!picture_files::canWriteHeic()) {
        WARN("skipped: there is no encoder to make a HEIC with");
        return;
    }
    constexpr int side = 32;
    constexpr double most_levels = 6;  // the encoder is not without loss
    const TemporaryFolder folder;
    const auto file = folder.path() / "turned.heic";
    for (int turn = 1; turn <= 8; ++turn)
        for (const int exif : {1, turn, 6}) {
            CAPTURE(turn, exif);
            picture_files::write(
                file, picture_files::heic(squares(seen[1], side), turn, exifSaying(exif)));

            const vision::Photo photo = vision::loadPhoto(file);

            CHECK(photo.format == "HEIC");
            CHECK(photo.exif_orientation == 1);
            CHECK(furthestOff(photo.pixels, squares(seen[static_cast<std::size_t>(turn)], side)) <=
                  most_levels);
        }
}

TEST_CASE("A picture without Exif stays as it is stored", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "plain";
    const cv::Mat stored = squares(seen[1], 1);
    for (const auto& bytes : {picture_files::png(stored), picture_files::webp(stored),
                              picture_files::bmp({.pixels = stored})}) {
        picture_files::write(file, bytes);
        const vision::Photo photo = vision::loadPhoto(file);
        CHECK(photo.exif_orientation == 1);
        CHECK(furthestOff(photo.pixels, stored) == 0);
    }
}
