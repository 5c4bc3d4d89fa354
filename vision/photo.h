#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include <opencv2/core.hpp>

// One convention for pixels, everywhere in Weftmark: x to the right, y down, pixel centres at whole
// numbers as in OpenCV; corners of a stamp clockwise from the *stamp's* own top left; angles
// clockwise in degrees. Colour is BGR, 8 bits; grey is CV_8UC1 with dark ink.
namespace vision {

// What the camera wrote beside the picture; fields are empty when it did not.
struct CaptureFacts {
    std::string taken_at;  // local time as the camera wrote it, "1998-05-01T12:30:00"
    std::string camera;    // maker and model
    std::string lens;
    std::optional<double> focal_length_mm;
    std::optional<double> exposure_s;
    std::optional<double> aperture_f;
    std::optional<int> iso;
};

// An original picture, upright. The file is never changed.
struct Photo {
    cv::Mat pixels;              // CV_8UC3 in sRGB, turned upright once by its EXIF orientation
    std::filesystem::path file;  // as given
    std::string original_name;   // the file's own name, UTF-8, without its folder
    std::string sha256;          // of the file's bytes, 64 hexadecimal digits
    std::string format;          // "JPEG", "PNG", "TIFF", "WebP", "BMP" or "HEIC"
    // 1 to 8, as stored; already applied to `pixels`. 1 for HEIC, which turns its picture itself.
    int exif_orientation = 1;
    CaptureFacts capture;
    std::vector<std::string>
        warnings;  // sentences for the person, e.g. how much of a file is missing
};

struct LoadOptions {
    // Larger pictures are refused before they are decoded: 250 megapixels take 750 MB.
    double max_megapixels = 250;
};

// Loads a JPEG, PNG, TIFF, WebP, BMP or HEIC picture: size and kind told from its own header before
// decoding (never from the file's name), turned upright once, grey, palette, 16 bits and CMYK
// brought to BGR, an embedded colour profile followed to sRGB, what is transparent laid on white.
// HEIC needs a build that found libheif; another one says so in its sentence. Throws ImageError,
// with the file and the remedy, for a file that is missing, unreadable, a folder, empty, of another
// kind, damaged or torn off with less than nine tenths of it good, or over the limit;
// std::invalid_argument when the limit is not positive. A picture of which at least nine tenths are
// good is returned with a warning that says how much is missing where it is torn off (of damage in
// the middle nobody can tell how far it reaches); so is one with a colour profile that cannot be
// followed, or with further pictures behind the first. (JPEG, lossy WebP and HEIC have no check
// sums: harm to them that still decodes goes unseen. A torn HEIC is refused.)
Photo loadPhoto(const std::filesystem::path& file, const LoadOptions& options = {});

}  // namespace vision
