#include <algorithm>
#include <filesystem>

#include <catch2/catch.hpp>

#include "tests/support/picture_files.h"
#include "tests/support/temporary_folder.h"
#include "tests/vision/photo_loading.h"
#include "vision/image_error.h"
#include "vision/photo.h"
#include "vision/photo_heic.h"

namespace {

using Catch::Matchers::Contains;
using picture_files::Bytes;
using support::TemporaryFolder;

std::ptrdiff_t openDescriptors()
{
    const std::filesystem::directory_iterator open("/proc/self/fd");
    return std::distance(begin(open), end(open));
}

struct WholeFile {
    const char* name;
    Bytes bytes;
    bool tells_share = true;  // of what is missing
};

std::vector<WholeFile> wholeFiles()
{
    std::vector<WholeFile> files = {
        {"JPEG", picture_files::jpeg(noise({128, 128}))},
        {"PNG", picture_files::png(noise({128, 128}))},
        {"WebP", picture_files::webp(noise({128, 128}))},
        {"WebP", picture_files::webp(noise({128, 128}), false)},
        {"BMP", picture_files::bmp({.pixels = noise({128, 128})})},
    };
    if (picture_files::canWriteHeic())
        files.push_back({"HEIC", picture_files::heic(noise({128, 128})), false});
    return files;
}

}  // namespace

TEST_CASE("A torn file of every format says so, and nothing stays open", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "torn";
    const std::ptrdiff_t before = openDescriptors();
    for (const auto& [name, bytes, tells_share] : wholeFiles())
        for (const double share : {0.5, 0.8}) {
            CAPTURE(name, share);
            picture_files::write(file, firstPart(bytes, share));
            const std::string said = complaint(file);
            CHECK_THAT(said, Contains(file.string()));
            CHECK_THAT(said, Contains(tells_share ? "is torn off: about" : "is torn off: part") &&
                                 Contains("is missing; copy it again from the camera or card."));
        }
    CHECK(openDescriptors() == before);
}

// libtiff writes the directory last, so a torn copy has lost its very beginning.
TEST_CASE("A TIFF torn off or with its rows elsewhere says so", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "torn";
    const Bytes whole = picture_files::tiff({.samples = noise({128, 128})});
    picture_files::write(file, firstPart(whole, 0.7));
    CHECK_THAT(complaint(file), Contains("is torn off before its picture begins; copy it again"));

    Bytes harmed = whole;
    for (std::size_t i = whole.size() / 3; i < whole.size() / 3 + 6000; ++i)
        harmed[i] = static_cast<unsigned char>(~harmed[i]);
    picture_files::write(file, harmed);
    CHECK_THAT(complaint(file),
               Contains("is damaged: part of the picture cannot be trusted; copy it again"));
}

TEST_CASE("Of a nearly whole WebP or BMP the rest is read, with a warning", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "torn";
    // libwebp gives rows out in bands of 16, so the picture is high.
    const cv::Mat original = noise({64, 800});
    for (const Bytes& whole : {picture_files::webp(original),
                               picture_files::bmp({.pixels = original, .from_top = true})}) {
        picture_files::write(file, firstPart(whole, 0.95));
        const vision::Photo photo = vision::loadPhoto(file);
        REQUIRE(photo.warnings.size() == 1);
        CHECK_THAT(photo.warnings[0], Contains("is torn off: about") && Contains("is missing"));
        const cv::Rect top(0, 0, 64, 720);
        CHECK(cv::norm(photo.pixels(top), original(top), cv::NORM_INF) == 0);
    }
}

TEST_CASE("Rare and moving pictures and camera raws get a remedy of their own", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "rare";
    Bytes packed = picture_files::bmp({.pixels = noise({128, 128})});
    packed[30] = 1;  // BI_RLE8
    picture_files::write(file, packed);
    CHECK_THAT(complaint(file), Contains("is a BMP of a rare kind; save it again"));

    // DNGVersion (50706) makes a camera raw of what else is a TIFF; another tag takes its number.
    picture_files::ExifBlock facts;
    facts.camera = {{50708, "HO 12"}};  // UniqueCameraModel
    Bytes raw = picture_files::tiff({.samples = noise({128, 128}), .facts = facts});
    picture_files::write(file, raw);
    CHECK(complaint(file) == "loaded");
    const Bytes number = {0x14, 0xC6}, version = {0x12, 0xC6};
    auto at = std::search(raw.begin(), raw.end(), number.begin(), number.end());
    while (at != raw.end() && at[2] != 2)  // the tag, of the type ASCII
        at = std::search(at + 1, raw.end(), number.begin(), number.end());
    REQUIRE(at != raw.end());
    std::copy(version.begin(), version.end(), at);
    at[2] = 1;  // bytes
    at[4] = 4;
    picture_files::write(file, raw);
    CHECK_THAT(complaint(file), Contains("is a camera raw file; develop it"));
}

TEST_CASE("A HEIC whose pieces make more than its header tells is refused", "[vision][photo]")
{
    if (!picture_files::canWriteHeic()) {
        WARN("skipped: there is no encoder to make a HEIC with");
        return;
    }
    const TemporaryFolder folder;
    const auto file = folder.path() / "grid.heic";
    // The encoder puts a picture that does not fill its last block together from a grid of one.
    Bytes bytes = picture_files::heic(noise({61, 45}));
    picture_files::write(file, bytes);
    REQUIRE(complaint(file) == "loaded");
    const std::string name = "idat";
    const auto at = std::search(bytes.begin(), bytes.end(), name.begin(), name.end());
    REQUIRE(at != bytes.end());
    REQUIRE(at[4 + 5] == 61);  // behind version, flags, rows, columns: the width in two bytes
    at[4 + 4] = 0xFF;
    at[4 + 6] = 0xFF;
    picture_files::write(file, bytes);
    CHECK_THAT(complaint(file),
               Contains("is damaged: part of the picture cannot be trusted; copy"));
}

TEST_CASE("HEIC without a decoder says what to do", "[vision][photo]")
{
    const TemporaryFolder folder;
    const auto file = folder.path() / "strap.heic";
    picture_files::write(file, std::string("\0\0\0\x18"
                                           "ftypheic\0\0\0\0heicmif1",
                                           24));
    CHECK_THAT(complaint(file),
               Contains(vision::canDecodeHeic()
                            ? "is damaged: part of the picture cannot be trusted; copy it again"
                            : "this build has no decoder for it; save it as JPEG, or install"));
}
