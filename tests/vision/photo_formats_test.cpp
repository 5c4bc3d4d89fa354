#include <catch2/catch.hpp>

#include "tests/support/picture_files.h"
#include "tests/support/temporary_folder.h"
#include "tests/vision/photo_loading.h"
#include "vision/image_error.h"
#include "vision/photo.h"

namespace {

using Catch::Matchers::Contains;
using picture_files::Bytes;
using picture_files::TiffMeaning;
using support::TemporaryFolder;

cv::Mat noiseOf(cv::Size size, int type)
{
    cv::Mat picture(size, type);
    cv::RNG random(23);
    random.fill(picture, cv::RNG::UNIFORM, 0, CV_MAT_DEPTH(type) == CV_16U ? 65536 : 256);
    return picture;
}

double furthest(const cv::Mat& a, const cv::Mat& b)
{
    REQUIRE(a.size() == b.size());
    REQUIRE(a.type() == b.type());
    return cv::norm(a, b, cv::NORM_INF);
}

cv::Mat swapped(const cv::Mat& rgb)
{
    cv::Mat bgr(rgb.size(), rgb.type());
    cv::mixChannels(rgb, bgr, {0, 2, 1, 1, 2, 0});
    return bgr;
}

// 8-bit v is v * 257 in 16 bits.
cv::Mat to8Bits(const cv::Mat& deep)
{
    cv::Mat levels;
    deep.convertTo(levels, CV_8U, 1.0 / 257);
    return levels;
}

// Laid on white by its definition, in floating point.
cv::Mat onWhite(const cv::Mat& bgra)
{
    cv::Mat bgr(bgra.size(), CV_8UC3);
    for (int y = 0; y < bgra.rows; ++y)
        for (int x = 0; x < bgra.cols; ++x) {
            const auto& from = bgra.at<cv::Vec4b>(y, x);
            for (int c = 0; c < 3; ++c)
                bgr.at<cv::Vec3b>(y, x)[c] =
                    cv::saturate_cast<uchar>(255 + (from[c] - 255) * from[3] / 255.0);
        }
    return bgr;
}

}  // namespace

TEST_CASE("TIFF: strips, tiles and planes, 8 and 16 bits, grey and colour", "[vision][photo]")
{
    for (const int type : {CV_8UC1, CV_8UC3, CV_16UC1, CV_16UC3})
        for (const int layout : {0, 1, 2}) {
            CAPTURE(type, layout);
            const cv::Mat samples = noiseOf({37, 29}, type);
            const vision::Photo photo = loaded(picture_files::tiff(
                {.samples = samples, .tiled = layout == 1, .planes_apart = layout == 2}));
            cv::Mat expected = to8Bits(samples);
            if (samples.depth() == CV_8U)
                expected = samples;
            if (samples.channels() == 1)
                cv::merge(std::vector<cv::Mat>(3, expected), expected);
            CHECK(photo.format == "TIFF");
            CHECK(photo.warnings.empty());
            CHECK(furthest(photo.pixels, swapped(expected)) == 0);
        }
}

TEST_CASE("TIFF: palette, white as nothing, inks", "[vision][photo]")
{
    std::vector<cv::Vec3b> palette(256);
    for (std::size_t i = 0; i < palette.size(); ++i)
        palette[i] = cv::Vec3b(static_cast<uchar>(255 - i), static_cast<uchar>(i / 2),
                               static_cast<uchar>(i));
    const cv::Mat numbers = noiseOf({20, 10}, CV_8UC1);
    const vision::Photo coloured = loaded(picture_files::tiff(
        {.samples = numbers, .meaning = TiffMeaning::Palette, .palette_bgr = palette}));
    CHECK(coloured.pixels.at<cv::Vec3b>(4, 7) == palette[numbers.at<uchar>(4, 7)]);

    for (const int type : {CV_8UC1, CV_16UC1}) {
        const int most = type == CV_16UC1 ? 65535 : 255;
        const cv::Mat samples(4, 4, type, cv::Scalar::all(most / 5));
        const vision::Photo turned =
            loaded(picture_files::tiff({.samples = samples, .meaning = TiffMeaning::MinIsWhite}));
        CHECK(turned.pixels.at<cv::Vec3b>(1, 1) == cv::Vec3b(204, 204, 204));
    }

    const cv::Mat inks(4, 4, CV_8UC4, cv::Scalar(255, 0, 0, 51));  // cyan and a fifth of black
    const vision::Photo print =
        loaded(picture_files::tiff({.samples = inks, .meaning = TiffMeaning::Inks}));
    CHECK(print.pixels.at<cv::Vec3b>(1, 1) == cv::Vec3b(204, 204, 0));
}

TEST_CASE("What is transparent is laid on white in every format that can be", "[vision][photo]")
{
    const cv::Mat bgra = noiseOf({21, 13}, CV_8UC4);
    const cv::Mat expected = onWhite(bgra);
    CHECK(furthest(loaded(picture_files::png(bgra)).pixels, expected) <= 1);
    // Where alpha is 0, a WebP need not keep the colour, which does not show.
    CHECK(furthest(loaded(picture_files::webp(bgra)).pixels, expected) <= 1);
    CHECK(furthest(loaded(picture_files::bmp({.pixels = bgra, .bits = 32})).pixels, expected) <= 1);

    cv::Mat rgba(bgra.size(), CV_8UC4), deep;
    cv::mixChannels(bgra, rgba, {0, 2, 1, 1, 2, 0, 3, 3});
    rgba.convertTo(deep, CV_16U, 257);
    CHECK(furthest(loaded(picture_files::tiff({.samples = rgba})).pixels, expected) <= 1);
    CHECK(furthest(loaded(picture_files::tiff({.samples = deep})).pixels, expected) <= 1);

    // Light already multiplied: a half there of full red is half red, half paper.
    const cv::Mat half(3, 3, CV_8UC4, cv::Scalar(128, 0, 0, 128));
    const vision::Photo photo =
        loaded(picture_files::tiff({.samples = half, .premultiplied = true}));
    CHECK(furthest(photo.pixels, cv::Mat(3, 3, CV_8UC3, cv::Scalar(127, 127, 255))) <= 1);
}

TEST_CASE("BMP: every depth, either way up", "[vision][photo]")
{
    for (const bool from_top : {false, true})
        for (const int bits : {1, 4, 8, 16, 24}) {
            CAPTURE(from_top, bits);
            cv::Mat pixels = noiseOf({19, 11}, bits <= 8 ? CV_8UC1 : CV_8UC3), expected = pixels;
            std::vector<cv::Vec3b> palette;
            if (bits <= 8) {
                pixels = pixels & ((1 << bits) - 1);
                for (int i = 0; i < 1 << bits; ++i)
                    palette.emplace_back(static_cast<uchar>(i), static_cast<uchar>(7 * i),
                                         static_cast<uchar>(255 - i));
                expected = cv::Mat(pixels.size(), CV_8UC3);
                for (int y = 0; y < pixels.rows; ++y)
                    for (int x = 0; x < pixels.cols; ++x)
                        expected.at<cv::Vec3b>(y, x) = palette[pixels.at<uchar>(y, x)];
            }
            const vision::Photo photo = loaded(picture_files::bmp(
                {.pixels = pixels, .bits = bits, .palette_bgr = palette, .from_top = from_top}));
            CHECK(photo.format == "BMP");
            // Five bits are told in steps of 8.
            CHECK(furthest(photo.pixels, expected) <= (bits == 16 ? 8 : 0));
        }
}

TEST_CASE("WebP without loss comes as it was, with loss nearly", "[vision][photo]")
{
    const cv::Mat picture = noiseOf({50, 30}, CV_8UC3);
    CHECK(furthest(loaded(picture_files::webp(picture)).pixels, picture) == 0);
    const cv::Mat flat(32, 32, CV_8UC3, cv::Scalar(90, 140, 160));
    CHECK(furthest(loaded(picture_files::webp(flat, false)).pixels, flat) <= 4);
}

TEST_CASE("A TIFF of several pages says that the first alone was read", "[vision][photo]")
{
    const cv::Mat samples = noiseOf({9, 9}, CV_8UC3);
    const vision::Photo photo = loaded(picture_files::tiff({.samples = samples, .pages = 2}));
    REQUIRE(photo.warnings.size() == 1);
    CHECK_THAT(photo.warnings[0], Contains("holds more than one picture") && Contains("; save"));
    CHECK(furthest(photo.pixels, swapped(samples)) == 0);
}

TEST_CASE("Capture facts come from every format that has them", "[vision][photo]")
{
    picture_files::ExifBlock exif;  // tag numbers of Exif 2.3
    exif.camera = {{0x010F, "Harbour Optics"}, {0x0110, "HO 12"}};
    exif.exposure = {{0x9003, "1998:05:01 12:30:00"}, {0xA434, "35 mm lens"}};
    exif.exposure_rationals = {{0x829A, 1, 125}, {0x829D, 28, 10}, {0x920A, 350, 10}};
    exif.iso = 400;
    const cv::Mat picture = noiseOf({64, 64}, CV_8UC3);
    std::vector<Bytes> files = {
        picture_files::jpegWithExif(picture_files::jpeg(picture), exif.bytes()),
        picture_files::pngWithExif(picture_files::png(picture), exif.bytes()),
        picture_files::webpWith(picture_files::webp(picture), exif.bytes(), {}),
        picture_files::tiff({.samples = picture, .facts = exif}),
    };
    if (picture_files::canWriteHeic())
        files.push_back(picture_files::heic(picture, 1, exif.bytes()));
    for (const Bytes& bytes : files) {
        const vision::Photo photo = loaded(bytes);
        CAPTURE(photo.format);
        CHECK(photo.original_name == "picture.jpg");
        CHECK(photo.capture.taken_at == "1998-05-01T12:30:00");
        CHECK(photo.capture.camera == "Harbour Optics HO 12");
        CHECK(photo.capture.lens == "35 mm lens");
        CHECK(photo.capture.exposure_s.value_or(0) == Approx(1.0 / 125));
        CHECK(photo.capture.aperture_f.value_or(0) == Approx(2.8));
        CHECK(photo.capture.focal_length_mm.value_or(0) == Approx(35));
        CHECK(photo.capture.iso.value_or(0) == 400);
    }
}

TEST_CASE("The limit is kept in every format", "[vision][photo]")
{
    const cv::Mat picture = noiseOf({400, 300}, CV_8UC3);
    std::vector<Bytes> files = {
        picture_files::jpeg(picture), picture_files::png(picture), picture_files::webp(picture),
        picture_files::tiff({.samples = picture}), picture_files::bmp({.pixels = picture})};
    if (picture_files::canWriteHeic())
        files.push_back(picture_files::heic(picture));
    for (const Bytes& bytes : files) {
        CHECK_THROWS_WITH(loaded(bytes, {.max_megapixels = 0.119}),
                          Contains("has 400 x 300 pixels, more than the limit of 0.119 megapixels; "
                                   "save a smaller copy"));
        CHECK(loaded(bytes, {.max_megapixels = 0.12}).pixels.size() == picture.size());
    }
}
