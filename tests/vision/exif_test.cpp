#include "vision/exif.h"

#include <catch2/catch.hpp>

#include "tests/support/picture_files.h"

namespace {

// Tag numbers of Exif 2.2 (JEITA CP-3451), section 4.6; lens model of Exif 2.3.
picture_files::ExifBlock cameraBlock()
{
    picture_files::ExifBlock block;
    block.orientation = 6;
    block.camera = {{0x010F, "Harbour Optics"}, {0x0110, "HO 12"}};
    block.exposure = {{0x9003, "1998:05:01 12:30:00"}, {0xA434, "35 mm lens"}};
    block.exposure_rationals = {{0x829A, 1, 125}, {0x829D, 28, 10}, {0x920A, 350, 10}};
    block.iso = 400;
    return block;
}

}  // namespace

TEST_CASE("Capture facts are read in both byte orders", "[vision][exif]")
{
    for (const bool big_endian : {true, false}) {
        CAPTURE(big_endian);
        picture_files::ExifBlock block = cameraBlock();
        block.big_endian = big_endian;

        const vision::ExifFacts facts = vision::readExif(block.bytes());

        CHECK(facts.orientation == 6);
        CHECK(facts.capture.taken_at == "1998-05-01T12:30:00");
        CHECK(facts.capture.camera == "Harbour Optics HO 12");
        CHECK(facts.capture.lens == "35 mm lens");
        CHECK(facts.capture.exposure_s.value() == Approx(1.0 / 125));
        CHECK(facts.capture.aperture_f.value() == Approx(2.8));
        CHECK(facts.capture.focal_length_mm.value() == Approx(35));
        CHECK(facts.capture.iso.value() == 400);
    }
}

TEST_CASE("A camera's maker is said once", "[vision][exif]")
{
    picture_files::ExifBlock block;
    block.camera = {{0x010F, "HARBOUR"}, {0x0110, "Harbour 12"}};
    CHECK(vision::readExif(block.bytes()).capture.camera == "Harbour 12");
    block.camera = {{0x010F, "Harbour"}};
    CHECK(vision::readExif(block.bytes()).capture.camera == "Harbour");
}

TEST_CASE("What a camera left blank stays empty", "[vision][exif]")
{
    picture_files::ExifBlock block;
    block.orientation = 9;
    block.exposure = {{0x9003, "    :  :     :  :  "}};
    block.exposure_rationals = {{0x829A, 1, 0}, {0x829D, 0, 1}};

    const vision::ExifFacts facts = vision::readExif(block.bytes());

    CHECK(facts.orientation == 1);
    CHECK(facts.capture.taken_at.empty());
    CHECK(facts.capture.camera.empty());
    CHECK_FALSE(facts.capture.exposure_s);
    CHECK_FALSE(facts.capture.aperture_f);
    CHECK_FALSE(facts.capture.iso);
    CHECK(vision::readExif({}).orientation == 1);
}

TEST_CASE("A damaged Exif block gives less, never an error", "[vision][exif]")
{
    const picture_files::Bytes whole = cameraBlock().bytes();
    for (std::size_t length = 0; length < whole.size(); ++length)
        for (const bool flip : {false, true}) {
            picture_files::Bytes damaged(whole.begin(),
                                         whole.begin() + static_cast<std::ptrdiff_t>(length));
            if (flip && length > 4)
                damaged[length / 2] ^= 0xFF;
            const vision::ExifFacts facts = vision::readExif(damaged);
            REQUIRE(facts.orientation >= 1);
            REQUIRE(facts.orientation <= 8);
        }
}
