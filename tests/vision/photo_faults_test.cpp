#include <unistd.h>

#include <chrono>
#include <string>

#include <sys/stat.h>
#include <catch2/catch.hpp>
#include <opencv2/core.hpp>

#include "tests/support/picture_files.h"
#include "tests/support/temporary_folder.h"
#include "tests/vision/photo_loading.h"
#include "vision/image_error.h"
#include "vision/photo.h"

namespace {

using Catch::Matchers::Contains;
using support::TemporaryFolder;

// The sentence must name the file, the trouble and the remedy.
void checkSaid(const std::filesystem::path& file, const std::string& trouble,
               const std::string& remedy)
{
    const std::string said = complaint(file);
    CHECK_THAT(said, Contains(file.string()));
    CHECK_THAT(said, Contains(trouble));
    CHECK_THAT(said, Contains("; " + remedy));
    CHECK(said.back() == '.');
}

}  // namespace

TEST_CASE("A file that is not there, a folder, an empty file", "[vision][photo]")
{
    const TemporaryFolder folder;
    checkSaid(folder.path() / "nowhere.jpg", "is not there", "check the name");
    checkSaid(folder.path(), "is a folder", "name the photographs in it");
    const auto empty = folder.path() / "empty.jpg";
    picture_files::write(empty, std::string());
    checkSaid(empty, "is empty", "copy it again");
    const auto pipe = folder.path() / "pipe.jpg";
    REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
    checkSaid(pipe, "is not an ordinary file", "name a JPEG, PNG, TIFF");
}

TEST_CASE("A file that one may not read", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "locked.jpg";
    picture_files::write(file, picture_files::jpeg(noise({400, 400})));
    std::filesystem::permissions(folder.path(), std::filesystem::perms(0755));
    std::filesystem::permissions(file, std::filesystem::perms::none);
    // Root may read everything, so the check is made as nobody.
    const uid_t nobody = 65534, me = geteuid();
    if (me == 0)
        REQUIRE(seteuid(nobody) == 0);
    const std::string said = complaint(file);
    if (me == 0)
        REQUIRE(seteuid(me) == 0);
    CHECK_THAT(said, Contains(file.string()));
    CHECK_THAT(said, Contains("cannot be opened (Permission denied); check who may read it."));
}

TEST_CASE("A file that is no picture, whatever it is called", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "note.jpg";
    picture_files::write(file, std::string("A note about a strap.\nSecond line, mit Umlaut: ü\n"));
    checkSaid(file, "holds text", "name a JPEG, PNG, TIFF");
    picture_files::write(file, std::string(5000, '\0'));
    checkSaid(file, "nothing but zeros", "copy it again");
    picture_files::write(file, std::string("\x01\x02\x03\x04\x05 something else"));
    checkSaid(file, "is not a picture of a known kind", "save it as JPEG or PNG");
}

TEST_CASE("Pictures of other formats are named, with the remedy", "[vision][photo]")
{
    // First bytes from the formats' specifications (ISO/IEC 23008-12; GIF89a; ISO 32000; ISO/IEC
    // 15444-1) and, of camera raw, from common practice.
    using namespace std::string_literals;
    const std::vector<std::pair<std::string, std::string>> heads = {
        {"\0\0\0\x18"s + "ftypavif\0\0\0\0"s, "AVIF"},
        {"\0\0\0\x18"s + "ftyphevc\0\0\0\0"s, "moving HEIC"},
        {"GIF89a\x01\0\x01\0"s, "GIF"},
        {"%PDF-1.4\n"s, "PDF"},
        {"\0\0\0\x0CjP  \r\n"s, "JPEG 2000"},
        {"II*\0\x10\0\0\0CR\2\0"s, "camera raw"},
    };
    const TemporaryFolder folder;
    const auto file = folder.path() / "strap.jpg";
    for (const auto& [head, name] : heads) {
        CAPTURE(name);
        picture_files::write(file, head + std::string(100, '\x07'));
        checkSaid(file, (name == "AVIF" ? "is an " : "is a ") + name, "save it as JPEG or PNG");
    }
}

TEST_CASE("A torn picture is an error when much is missing", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "torn";
    const std::vector<picture_files::Bytes> pictures = {
        picture_files::jpeg(noise({400, 400})), picture_files::progressiveJpeg(noise({400, 400})),
        picture_files::png(noise({400, 400}))};
    for (const auto& whole : pictures) {
        picture_files::write(file, firstPart(whole, 0.3));
        checkSaid(file, "is torn off: about", "copy it again from the camera or card");
        picture_files::write(file, firstPart(whole, 0.7));
        checkSaid(file, "is torn off: about", "copy it again from the camera or card");
        picture_files::write(file, picture_files::Bytes(whole.begin(), whole.begin() + 20));
        checkSaid(file, "is torn off before its picture begins", "copy it again");
    }
}

TEST_CASE("A torn picture of which most is there warns how much is missing", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "torn";
    const cv::Mat original = noise({400, 400});
    for (const auto& whole : {picture_files::jpeg(original), picture_files::png(original)}) {
        picture_files::write(file, firstPart(whole, 0.97));

        const vision::Photo photo = vision::loadPhoto(file);

        CHECK(photo.pixels.size() == original.size());
        REQUIRE(photo.warnings.size() == 1);
        CHECK_THAT(photo.warnings[0], Contains(file.string()));
        // 3 % of the bytes are 3 % of the rows of noise, to within a row of JPEG blocks (4 %).
        CHECK_THAT(photo.warnings[0], Contains("about 2 %") || Contains("about 3 %") ||
                                          Contains("about 4 %") || Contains("about 5 %"));
        CHECK_THAT(photo.warnings[0], Contains("is missing; copy it again"));
    }
    picture_files::write(file, firstPart(picture_files::progressiveJpeg(original), 0.97));
    const vision::Photo progressive = vision::loadPhoto(file);
    REQUIRE(progressive.warnings.size() == 1);
    // The end of the last scan, which adds the last bit to what is known: it counts for less.
    CHECK_THAT(progressive.warnings[0],
               Contains("about 1 %") || Contains("about 2 %") || Contains("about 3 %"));
}

TEST_CASE("An interrupted copy that ends in zeros counts as torn", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "interrupted.jpg";
    auto bytes = picture_files::jpeg(noise({400, 400}));
    const auto middle = bytes.begin() + static_cast<std::ptrdiff_t>(bytes.size() / 2);
    std::fill(middle, bytes.end(), static_cast<unsigned char>(0));
    picture_files::write(file, bytes);
    checkSaid(file, "is torn off: about 5", "copy it again");  // 50 % or a little more
}

TEST_CASE("A whole picture with more behind its end loads without a warning", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "more.jpg";
    for (const auto& whole :
         {picture_files::jpeg(noise({400, 400})), picture_files::png(noise({400, 400}))}) {
        auto bytes = whole;
        bytes.insert(bytes.end(), 5000, static_cast<unsigned char>(0));
        picture_files::write(file, bytes);
        CHECK(vision::loadPhoto(file).warnings.empty());
    }
}

TEST_CASE("A damaged picture says so", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "damaged";
    auto jpeg = picture_files::jpeg(noise({400, 400}));
    for (std::size_t i = jpeg.size() / 3; i < jpeg.size() / 3 + 400; ++i)
        jpeg[i] = 0xFF;  // to JPEG a marker, where more of the picture should be
    picture_files::write(file, jpeg);
    checkSaid(file, "is damaged: part of the picture", "copy it again");

    auto png = picture_files::png(noise({400, 400}));
    png[png.size() / 3] ^= 0x55;
    picture_files::write(file, png);
    checkSaid(file, "is damaged", "copy it again");
    png = picture_files::png(noise({400, 400}));
    png[18] ^= 0x55;  // in the width, so that the header's check sum is wrong
    picture_files::write(file, png);
    checkSaid(file, "is damaged in its header", "copy it again");
}

TEST_CASE("A picture over the limit is refused before it is decoded", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "huge.png";
    picture_files::write(file, picture_files::blackPng(30000, 30000));
    REQUIRE(std::filesystem::file_size(file) < 2'000'000);

    const auto begin = std::chrono::steady_clock::now();
    checkSaid(file, "has 30000 x 30000 pixels, more than the limit of 250 megapixels",
              "save a smaller copy");
    // Decoding it takes several seconds and 2.7 GB; reading its header some milliseconds.
    CHECK(std::chrono::steady_clock::now() - begin < std::chrono::milliseconds(500));

    auto jpeg = picture_files::jpeg(noise({400, 400}));
    CHECK_THAT(
        [&] {
            picture_files::write(file, jpeg);
            return complaint(file, {.max_megapixels = 0.15});
        }(),
        Contains("has 400 x 400 pixels"));
    CHECK(complaint(file, {.max_megapixels = 0.17}) == "loaded");
}

TEST_CASE("A black PNG within the limit does load", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "black.png";
    picture_files::write(file, picture_files::blackPng(301, 203));
    const vision::Photo photo = vision::loadPhoto(file);
    CHECK(photo.pixels.size() == cv::Size(301, 203));
    CHECK(cv::countNonZero(photo.pixels.reshape(1)) == 0);
}
