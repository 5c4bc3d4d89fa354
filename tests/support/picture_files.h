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

}  // namespace picture_files
