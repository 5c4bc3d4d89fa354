#include <array>

#include <catch2/catch.hpp>

#include "tests/support/picture_files.h"
#include "tests/support/temporary_folder.h"
#include "vision/photo.h"

namespace {

using support::TemporaryFolder;
using Matrix = std::vector<std::vector<int>>;

// What is to be seen when [[1,2,3],[4,5,6]] is stored with each orientation: Exif 2.2 (JEITA
// CP-3451), tag Orientation (0x0112), section 4.6.4.
const std::array<Matrix, 9> kSeen = {{
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

constexpr int kLevelStep = 40;

// The stored matrix, each value a square of grey of `side` pixels.
cv::Mat storedSquares(int side)
{
    cv::Mat grey(2 * side, 3 * side, CV_8UC1);
    for (int row = 0; row < 2; ++row)
        for (int column = 0; column < 3; ++column)
            grey(cv::Rect(column * side, row * side, side, side)) =
                kLevelStep * (3 * row + column + 1);
    return grey;
}

Matrix seenSquares(const cv::Mat& bgr, int side)
{
    Matrix seen;
    for (int y = side / 2; y < bgr.rows; y += side) {
        seen.emplace_back();
        for (int x = side / 2; x < bgr.cols; x += side)
            seen.back().push_back((bgr.at<cv::Vec3b>(y, x)[1] + kLevelStep / 2) / kLevelStep);
    }
    return seen;
}

picture_files::Bytes exifSaying(int orientation)
{
    picture_files::ExifBlock block;
    block.orientation = orientation;
    return block.bytes();
}

}  // namespace

TEST_CASE("A JPEG is turned upright exactly once", "[vision][photo]")
{
    constexpr int kSide = 16;  // a whole JPEG block, so that levels do not run into each other
    const TemporaryFolder folder;
    const auto file = folder.path() / "turned.jpg";
    for (const bool progressive : {false, true})
        for (int orientation = 1; orientation <= 8; ++orientation) {
            CAPTURE(progressive, orientation);
            const auto plain = progressive ? picture_files::progressiveJpeg(storedSquares(kSide))
                                           : picture_files::jpeg(storedSquares(kSide));
            picture_files::write(file, picture_files::jpegWithExif(plain, exifSaying(orientation)));

            const vision::Photo photo = vision::loadPhoto(file);

            CHECK(photo.exif_orientation == orientation);
            CHECK(seenSquares(photo.pixels, kSide) == kSeen[static_cast<std::size_t>(orientation)]);
        }
}

TEST_CASE("A PNG is turned upright exactly once", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "turned.png";
    const auto plain = picture_files::png(storedSquares(1));
    for (int orientation = 1; orientation <= 8; ++orientation) {
        CAPTURE(orientation);
        picture_files::write(file, picture_files::pngWithExif(plain, exifSaying(orientation)));

        const vision::Photo photo = vision::loadPhoto(file);

        CHECK(photo.exif_orientation == orientation);
        CHECK(seenSquares(photo.pixels, 1) == kSeen[static_cast<std::size_t>(orientation)]);
    }
}

TEST_CASE("A picture without Exif stays as it is stored", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "plain.png";
    picture_files::write(file, picture_files::png(storedSquares(1)));
    const vision::Photo photo = vision::loadPhoto(file);
    CHECK(photo.exif_orientation == 1);
    CHECK(seenSquares(photo.pixels, 1) == kSeen[1]);
}
