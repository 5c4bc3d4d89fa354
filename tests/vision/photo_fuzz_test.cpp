#include <catch2/catch.hpp>

#include "tests/support/picture_files_harmed.h"
#include "tests/support/temporary_folder.h"
#include "vision/image_error.h"
#include "vision/photo.h"

TEST_CASE("Harmed bytes give a photo or a sentence, never a crash", "[vision][photo]")
{
    const support::TemporaryFolder folder;
    const auto file = folder.path() / "harmed";
    std::mt19937 random(20250301);
    int loaded = 0, refused = 0;
    for (const auto& [name, whole] : picture_files::soundFiles()) {
        picture_files::write(file, whole);
        CHECK(vision::loadPhoto(file).format == name);
        for (int round = 0; round < 150; ++round) {
            CAPTURE(name, round);
            picture_files::write(file, picture_files::harmed(whole, random));
            try {
                const vision::Photo photo = vision::loadPhoto(file, {.max_megapixels = 2});
                REQUIRE(photo.pixels.type() == CV_8UC3);
                REQUIRE_FALSE(photo.pixels.empty());
                ++loaded;
            } catch (const vision::ImageError&) {
                ++refused;
            }
        }
    }
    // Both ways are gone often, or the loop tests nothing.
    CHECK(loaded > 200);
    CHECK(refused > 200);
}
