#include "vision/photo.h"

#include <catch2/catch.hpp>
#include <opencv2/imgcodecs.hpp>

#include "tests/support/picture_files.h"
#include "tests/support/temporary_folder.h"
#include "tests/vision/photo_loading.h"

namespace {

using support::TemporaryFolder;

const cv::Vec3b khaki_bgr(90, 140, 160);  // BGR

cv::Mat khaki(cv::Size size = {40, 30})
{
    return cv::Mat(size, CV_8UC3, cv::Scalar(khaki_bgr[0], khaki_bgr[1], khaki_bgr[2]));
}

cv::Vec3b colourAt(const vision::Photo& photo, int x, int y)
{
    return photo.pixels.at<cv::Vec3b>(y, x);
}

}  // namespace

TEST_CASE("A photo knows its file, format and hash", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "Gürtel № 7 – ремень.jpg";
    picture_files::ExifBlock exif;
    exif.camera = {{0x0110, "HO 12"}};
    picture_files::write(file,
                         picture_files::jpegWithExif(picture_files::jpeg(khaki()), exif.bytes()));

    const vision::Photo photo = vision::loadPhoto(file);

    CHECK(photo.file == file);
    CHECK(photo.format == "JPEG");
    CHECK(photo.sha256.size() == 64);
    CHECK(photo.capture.camera == "HO 12");
    CHECK(photo.warnings.empty());
    REQUIRE(photo.pixels.type() == CV_8UC3);
    CHECK(photo.pixels.size() == cv::Size(40, 30));
    CHECK(distance(colourAt(photo, 20, 15), khaki_bgr) <= 2);  // one flat colour survives JPEG
}

TEST_CASE("The hash is of the file's bytes", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "abc.png";
    picture_files::write(file, picture_files::png(khaki()));
    const auto copy = folder.path() / "copy.jpg";
    std::filesystem::copy_file(file, copy);
    const vision::Photo first = vision::loadPhoto(file);
    const vision::Photo second = vision::loadPhoto(copy);
    CHECK(first.sha256 == second.sha256);

    auto longer = picture_files::png(khaki());
    longer.push_back('x');  // behind the end mark: the same pixels, another file
    picture_files::write(copy, longer);
    CHECK(vision::loadPhoto(copy).sha256 != first.sha256);
}

TEST_CASE("The kind is told from the bytes, not from the name", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "really_a_png.jpg";
    picture_files::write(file, picture_files::png(khaki()));
    const vision::Photo photo = vision::loadPhoto(file);
    CHECK(photo.format == "PNG");
    CHECK(colourAt(photo, 3, 3) == khaki_bgr);
}

TEST_CASE("Grey pictures come as BGR", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "grey";
    const cv::Mat grey(24, 32, CV_8UC1, cv::Scalar(77));
    for (const auto& bytes : {picture_files::jpeg(grey), picture_files::png(grey)}) {
        picture_files::write(file, bytes);
        const vision::Photo photo = vision::loadPhoto(file);
        REQUIRE(photo.pixels.type() == CV_8UC3);
        CHECK(distance(colourAt(photo, 9, 9), {77, 77, 77}) <= 1);
    }
}

TEST_CASE("16 bits come down to 8 without a shift", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "deep.png";
    // 8-bit v is v * 257 in 16 bits (PNG specification, sample depth scaling): 16639 is 64.7.
    const cv::Mat deep(10, 10, CV_16UC3, cv::Scalar(200 * 257, 100 * 257, 16639));
    picture_files::write(file, picture_files::png(deep));
    CHECK(colourAt(vision::loadPhoto(file), 5, 5) == cv::Vec3b(200, 100, 65));
}

TEST_CASE("What is transparent is laid on white", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "cut_out.png";
    cv::Mat bgra(1, 3, CV_8UC4);
    bgra.at<cv::Vec4b>(0, 0) = {10, 20, 30, 255};
    bgra.at<cv::Vec4b>(0, 1) = {10, 20, 30, 0};
    bgra.at<cv::Vec4b>(0, 2) = {0, 100, 255, 51};  // a fifth there: 255 - 51, 255 - 31, 255
    picture_files::write(file, picture_files::png(bgra));

    const vision::Photo photo = vision::loadPhoto(file);

    CHECK(colourAt(photo, 0, 0) == cv::Vec3b(10, 20, 30));
    CHECK(colourAt(photo, 1, 0) == cv::Vec3b(255, 255, 255));
    CHECK(colourAt(photo, 2, 0) == cv::Vec3b(204, 224, 255));
}

TEST_CASE("Palettes are looked up, with their transparency", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "palette.png";
    cv::Mat indices(9, 11, CV_8UC1);
    for (int y = 0; y < indices.rows; ++y)
        for (int x = 0; x < indices.cols; ++x)
            indices.at<uchar>(y, x) = static_cast<uchar>((x + y) % 3);
    const std::vector<cv::Vec3b> palette = {{1, 2, 3}, {90, 140, 160}, {40, 50, 60}};
    for (const bool interlaced : {false, true}) {
        CAPTURE(interlaced);
        picture_files::write(
            file, picture_files::palettePng(indices, palette, {255, 255, 0}, interlaced));
        const vision::Photo photo = vision::loadPhoto(file);
        REQUIRE(photo.pixels.size() == indices.size());
        CHECK(colourAt(photo, 0, 0) == palette[0]);
        CHECK(colourAt(photo, 4, 6) == palette[1]);
        CHECK(colourAt(photo, 10, 7) == cv::Vec3b(255, 255, 255));
    }
}

TEST_CASE("Inks of a CMYK picture become light", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "print.jpg";
    cv::Mat cmyk(16, 48, CV_8UC4, cv::Scalar::all(0));
    cmyk.colRange(0, 16) = cv::Scalar(255, 0, 0, 0);   // full cyan: no red
    cmyk.colRange(16, 32) = cv::Scalar(0, 0, 0, 255);  // full black
    for (const bool as_adobe : {true, false}) {
        CAPTURE(as_adobe);
        picture_files::write(file, picture_files::cmykJpeg(cmyk, as_adobe));
        const vision::Photo photo = vision::loadPhoto(file);
        REQUIRE(photo.pixels.type() == CV_8UC3);
        CHECK(distance(colourAt(photo, 8, 8), {255, 255, 0}) <= 3);
        CHECK(distance(colourAt(photo, 24, 8), {0, 0, 0}) <= 3);
        CHECK(distance(colourAt(photo, 40, 8), {255, 255, 255}) <= 3);  // no ink: paper
    }
}

TEST_CASE("Real photographs load at their size, as OpenCV decodes them", "[vision][photo]")
{
    // From Debian's opencv-doc; sizes as file(1) tells them.
    const std::filesystem::path folder = "/usr/share/doc/opencv-doc/examples";
    REQUIRE(std::filesystem::exists(folder));
    const std::vector<std::pair<const char*, cv::Size>> expected = {
        {"data/apple.jpg", {512, 512}},        {"data/building.jpg", {868, 600}},
        {"data/left01.jpg", {640, 480}},       {"data/licenseplate_motion.jpg", {600, 482}},
        {"data/messi5.jpg", {548, 342}},       {"data/aloeL.jpg", {1282, 1110}},
        {"data/box.png", {324, 223}},          {"data/sudoku.png", {558, 563}},
        {"data/imageTextR.png", {556, 323}},   {"text/scenetext01.jpg", {800, 600}},
        {"text/scenetext02.jpg", {1280, 960}}, {"text/scenetext03.jpg", {1004, 958}},
        {"text/scenetext04.jpg", {1280, 868}}, {"text/scenetext05.jpg", {1280, 960}},
        {"text/scenetext06.jpg", {640, 480}},
    };
    for (const auto& [name, size] : expected) {
        CAPTURE(name);
        const vision::Photo photo = vision::loadPhoto(folder / name);
        REQUIRE(photo.pixels.size() == size);
        REQUIRE(photo.pixels.type() == CV_8UC3);
        CHECK(photo.warnings.empty());
        const cv::Mat decoded = cv::imread((folder / name).string(), cv::IMREAD_COLOR);
        // Both stand on libjpeg and libpng; another transform may round one level away.
        CHECK(cv::norm(photo.pixels, decoded, cv::NORM_INF) <= 1);
    }
}

TEST_CASE("The pixel limit must be positive", "[vision][photo]")
{
    CHECK_THROWS_AS(vision::loadPhoto("a.jpg", {.max_megapixels = 0}), std::invalid_argument);
    CHECK_THROWS_AS(vision::loadPhoto("a.jpg", {.max_megapixels = -1}), std::invalid_argument);
}
