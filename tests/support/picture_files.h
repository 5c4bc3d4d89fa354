#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include <opencv2/core.hpp>

// Bytes of picture files for tests, put together by hand where a library would hide what is tested.
namespace picture_files {

using Bytes = std::vector<unsigned char>;

void write(const std::filesystem::path& file, const Bytes& bytes);
void write(const std::filesystem::path& file, const std::string& text);

// OpenCV's encoders; no Exif.
Bytes jpeg(const cv::Mat& picture, int quality = 95);
Bytes progressiveJpeg(const cv::Mat& picture, int quality = 95);
Bytes png(const cv::Mat& picture);

// Four inks per pixel (CV_8UC4, 255 = full ink), written as Adobe does (inverted, with its marker)
// or plainly.
Bytes cmykJpeg(const cv::Mat& cmyk, bool as_adobe);

// A PNG with a palette: `indices` CV_8UC1, below `palette.size()`; `alpha` may be empty or hold one
// value an entry.
Bytes palettePng(const cv::Mat& indices, const std::vector<cv::Vec3b>& palette_bgr,
                 const std::vector<unsigned char>& alpha, bool interlaced);

// A well-formed PNG of one bit a pixel, all black, whose file is small however large it is.
Bytes blackPng(int width_px, int height_px);

struct ExifText {
    std::uint16_t tag;
    std::string text;
};
struct ExifRational {
    std::uint16_t tag;
    std::uint32_t numerator, denominator;
};

// A TIFF-structured Exif block; tags of the camera go to IFD 0, those of the exposure to its own.
struct ExifBlock {
    int orientation = 1;
    std::vector<ExifText> camera;
    std::vector<ExifText> exposure;
    std::vector<ExifRational> exposure_rationals;
    int iso = 0;  // 0: not written
    bool big_endian = true;

    Bytes bytes() const;
};

Bytes jpegWithExif(const Bytes& jpeg, const Bytes& exif);  // as APP1, behind the start marker
Bytes pngWithExif(const Bytes& png, const Bytes& exif);    // as eXIf, behind IHDR

// A TIFF as libtiff writes it.
enum class TiffMeaning { Plain, MinIsWhite, Inks, Palette };
struct TiffPicture {
    cv::Mat samples;  // as stored, 8 or 16 bits: grey or RGB in this order, with straight alpha in
                      // a further channel; four inks; or numbers of the palette
    TiffMeaning meaning = TiffMeaning::Plain;
    std::vector<cv::Vec3b> palette_bgr{};  // 256 entries
    int orientation = 1;
    bool tiled = false;          // in tiles of 16 x 16
    bool planes_apart = false;   // each channel by itself, not tiled
    bool premultiplied = false;  // what the alpha is said to be
    int rows_a_strip = 7;
    int pages = 1;            // the same picture again
    bool is_preview = false;  // said to be a small version of another picture
    Bytes profile{};
    ExifBlock facts{};  // texts of the camera and of the exposure, rationals, speed
};
Bytes tiff(const TiffPicture& picture);

// BGR or BGRA, without loss or at quality 90.
Bytes webp(const cv::Mat& picture, bool lossless = true);
Bytes webpWith(const Bytes& webp, const Bytes& exif, const Bytes& profile);

struct BmpPicture {
    cv::Mat pixels;  // BGR or BGRA; for 1 to 8 bits numbers of the palette
    int bits = 24;   // 16 is stored by masks of 5, 6 and 5 bits, 32 by masks with alpha
    std::vector<cv::Vec3b> palette_bgr{};
    bool from_top = false;
    Bytes profile{};
};
Bytes bmp(const BmpPicture& picture);

// Whether libheif is there and has an encoder.
bool canWriteHeic();

// BGR. `turn` is an orientation that the file's own properties (irot, imir) are made to express;
// `exif` stands beside it.
Bytes heic(const cv::Mat& picture, int turn = 1, const Bytes& exif = {}, const Bytes& profile = {});

// Colour profiles made by Little CMS: light in proportion to the number stored, with the primaries
// and the white of sRGB; the same for grey; and four invented inks.
Bytes linearProfile();
Bytes linearGreyProfile();
Bytes inkProfile();
inline const cv::Vec3b profile_cyan_bgr(170, 120, 30);  // full cyan by inkProfile, in sRGB

Bytes jpegWithProfile(const Bytes& jpeg, const Bytes& profile);  // as APP2, behind the start marker
Bytes pngWithProfile(const Bytes& png, const Bytes& profile);    // as iCCP, behind IHDR

}  // namespace picture_files
