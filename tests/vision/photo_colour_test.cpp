#include "vision/photo_colour.h"

#include <catch2/catch.hpp>

#include "tests/support/picture_files.h"
#include "tests/support/temporary_folder.h"
#include "tests/vision/photo_loading.h"
#include "vision/photo.h"

namespace {

using Catch::Matchers::Contains;
using picture_files::Bytes;
using support::TemporaryFolder;

// Share of full light and the number that sRGB stores for it: IEC 61966-2-1, the curve with its
// straight piece below 0.0031308.
const std::vector<std::pair<double, int>> light_and_code = {
    {0.000000000, 0},   {0.000303527, 1},   {0.001517635, 5},   {0.003035270, 10},
    {0.003346536, 11},  {0.006995410, 20},  {0.031896033, 50},  {0.051269458, 64},
    {0.127437680, 100}, {0.181164244, 118}, {0.215860500, 128}, {0.304987314, 150},
    {0.502886458, 188}, {0.577580440, 200}, {0.715693501, 220}, {0.991102097, 254},
    {1.000000000, 255},
};

// One column for each of them, with light in proportion to the number.
cv::Mat lightOfCodes(int type)
{
    const double most = CV_MAT_DEPTH(type) == CV_16U ? 65535 : 255;
    cv::Mat light(8, static_cast<int>(light_and_code.size()), type);
    for (int x = 0; x < light.cols; ++x)
        light.col(x) =
            cv::Scalar::all(std::round(light_and_code[static_cast<std::size_t>(x)].first * most));
    return light;
}

void checkCodes(const vision::Photo& photo)
{
    CHECK(photo.warnings.empty());
    for (int x = 0; x < photo.pixels.cols; ++x) {
        const auto [light, code] = light_and_code[static_cast<std::size_t>(x)];
        CAPTURE(photo.format, light);
        for (int c = 0; c < 3; ++c)
            // 16 bits keep the darks; the profile's own white is rounded, which moves a level.
            CHECK(std::abs(photo.pixels.at<cv::Vec3b>(3, x)[c] - code) <= 1);
    }
}

}  // namespace

TEST_CASE("Linear light with its profile becomes sRGB", "[vision][photo]")
{
    const Bytes profile = picture_files::linearProfile();
    checkCodes(
        loaded(picture_files::pngWithProfile(picture_files::png(lightOfCodes(CV_16UC3)), profile)));
    checkCodes(
        loaded(picture_files::tiff({.samples = lightOfCodes(CV_16UC3), .profile = profile})));
    const Bytes grey = picture_files::linearGreyProfile();
    checkCodes(
        loaded(picture_files::pngWithProfile(picture_files::png(lightOfCodes(CV_16UC1)), grey)));
    checkCodes(loaded(picture_files::tiff({.samples = lightOfCodes(CV_16UC1), .profile = grey})));
    checkCodes(
        loaded(picture_files::tiff({.samples = lightOfCodes(CV_16UC1), .profile = profile})));
}

TEST_CASE("A profile is followed in every format that has one", "[vision][photo]")
{
    // 55 of 255 parts of light are 128 in sRGB (IEC 61966-2-1: 0.21569 and 0.21586).
    const cv::Mat light(64, 64, CV_8UC3, cv::Scalar::all(55)), grey(64, 64, CV_8UC1, 55);
    const Bytes profile = picture_files::linearProfile();
    std::vector<Bytes> files = {
        picture_files::jpegWithProfile(picture_files::jpeg(light), profile),
        picture_files::jpegWithProfile(picture_files::jpeg(grey), profile),
        picture_files::jpegWithProfile(picture_files::jpeg(grey),
                                       picture_files::linearGreyProfile()),
        picture_files::pngWithProfile(picture_files::png(light), profile),
        picture_files::webpWith(picture_files::webp(light), {}, profile),
        picture_files::tiff({.samples = light, .profile = profile}),
        picture_files::bmp({.pixels = light, .profile = profile}),
    };
    if (picture_files::canWriteHeic())
        files.push_back(picture_files::heic(light, 1, {}, profile));
    for (const Bytes& bytes : files) {
        const vision::Photo photo = loaded(bytes);
        CAPTURE(photo.format);
        CHECK(photo.warnings.empty());
        // One level of light is two of sRGB here; a lossy format may be one off.
        CHECK(distance(photo.pixels.at<cv::Vec3b>(30, 30), {128, 128, 128}) <= 2);
    }
}

TEST_CASE("Channels keep their order through a profile", "[vision][photo]")
{
    const cv::Vec3b bgr(10, 100, 200);
    const cv::Mat picture(16, 16, CV_8UC3, cv::Scalar(10, 100, 200));
    const cv::Mat rgb(16, 16, CV_8UC3, cv::Scalar(200, 100, 10));
    const cv::Mat rgba(16, 16, CV_8UC4, cv::Scalar(200, 100, 10, 255));
    const cv::Mat bgra(16, 16, CV_8UC4, cv::Scalar(10, 100, 200, 255));
    const Bytes profile = picture_files::linearProfile();
    // sRGB of 10, 100 and 200 parts of 255, by the formula of IEC 61966-2-1.
    const cv::Vec3b expected(56, 168, 229);
    for (const Bytes& bytes :
         {picture_files::pngWithProfile(picture_files::png(picture), profile),
          picture_files::pngWithProfile(picture_files::png(bgra), profile),
          picture_files::tiff({.samples = rgb, .profile = profile}),
          picture_files::tiff({.samples = rgba, .profile = profile}),
          picture_files::webpWith(picture_files::webp(bgra), {}, profile),
          picture_files::bmp({.pixels = bgra, .bits = 32, .profile = profile})}) {
        const vision::Photo photo = loaded(bytes);
        CAPTURE(photo.format, photo.pixels.at<cv::Vec3b>(5, 5));
        CHECK(distance(photo.pixels.at<cv::Vec3b>(5, 5), expected) <= 1);
    }
}

TEST_CASE("Inks with a profile become its colours", "[vision][photo]")
{
    const Bytes profile = picture_files::inkProfile();
    cv::Mat inks(16, 48, CV_8UC4, cv::Scalar::all(0));
    inks.colRange(0, 16) = cv::Scalar(255, 0, 0, 0);
    inks.colRange(16, 32) = cv::Scalar(0, 0, 0, 255);
    cv::Mat deep;
    inks.convertTo(deep, CV_16U, 257);
    using picture_files::TiffMeaning;
    for (const Bytes& bytes :
         {picture_files::jpegWithProfile(picture_files::cmykJpeg(inks, true), profile),
          picture_files::jpegWithProfile(picture_files::cmykJpeg(inks, false), profile),
          picture_files::tiff({.samples = inks, .meaning = TiffMeaning::Inks, .profile = profile}),
          picture_files::tiff(
              {.samples = deep, .meaning = TiffMeaning::Inks, .profile = profile})}) {
        const vision::Photo photo = loaded(bytes);
        CAPTURE(photo.format);
        CHECK(photo.warnings.empty());
        // JPEG is not without loss, and the profile's table is of 16 bits.
        CHECK(distance(photo.pixels.at<cv::Vec3b>(8, 8), picture_files::profile_cyan_bgr) <= 4);
        CHECK(distance(photo.pixels.at<cv::Vec3b>(8, 24), {0, 0, 0}) <= 4);
        CHECK(distance(photo.pixels.at<cv::Vec3b>(8, 40), {255, 255, 255}) <= 4);
    }
}

TEST_CASE("A profile that does not fit is left out, with a warning", "[vision][photo]")
{
    const cv::Mat picture(16, 16, CV_8UC3, cv::Scalar(10, 100, 200));
    for (const Bytes& profile : {Bytes(300, 7), picture_files::inkProfile()}) {
        const vision::Photo photo =
            loaded(picture_files::jpegWithProfile(picture_files::jpeg(picture), profile));
        CHECK(distance(photo.pixels.at<cv::Vec3b>(5, 5), {10, 100, 200}) <= 2);
        REQUIRE(photo.warnings.size() == 1);
        CHECK_THAT(photo.warnings[0], Contains("colour profile that cannot be followed"));
    }
}

TEST_CASE("Samples that are not those of the layout are the caller's mistake", "[vision][photo]")
{
    const vision::ToSrgb to_srgb({vision::ColourModel::Rgb}, {});
    CHECK_THROWS_AS(to_srgb.convert(cv::Mat(2, 2, CV_8UC4)), std::invalid_argument);
    CHECK_THROWS_AS(to_srgb.convert(cv::Mat(2, 2, CV_32FC3)), std::invalid_argument);
    const cv::Mat rgb(2, 2, CV_8UC3, cv::Scalar(1, 2, 3));
    CHECK(to_srgb.convert(rgb).at<cv::Vec3b>(1, 1) == cv::Vec3b(3, 2, 1));
    CHECK(rgb.at<cv::Vec3b>(1, 1) == cv::Vec3b(1, 2, 3));
}
