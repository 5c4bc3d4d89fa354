#include "vision/photo.h"

#include <cmath>
#include <sstream>
#include <stdexcept>

#include "vision/decoded_picture.h"
#include "vision/exif.h"
#include "vision/photo_bmp.h"
#include "vision/photo_file.h"
#include "vision/photo_heic.h"
#include "vision/photo_jpeg.h"
#include "vision/photo_png.h"
#include "vision/photo_tiff.h"
#include "vision/photo_webp.h"
#include "vision/sha256.h"

namespace vision {
namespace {

namespace fs = std::filesystem;

constexpr double enough = 0.9;  // share of a torn picture from which on it is worth looking at

std::string percent(double share)
{
    const auto whole = std::lround(100 * share);
    return whole < 1 ? "less than 1 %" : "about " + std::to_string(whole) + " %";
}

std::string tooLarge(const DecodedPicture& picture, double max_pixels)
{
    std::ostringstream text;
    text << "has " << picture.size_px.width << " x " << picture.size_px.height
         << " pixels, more than the limit of " << megapixels(max_pixels)
         << "; save a smaller copy or a part of it, or raise the limit if you trust the file.";
    return text.str();
}

// What a torn or damaged picture lacks, and the remedy.
std::string whatIsLacking(const DecodedPicture& picture)
{
    const bool torn = picture.fault == PictureFault::Torn;
    const std::string share = picture.whole ? percent(1 - *picture.whole) : "part";
    std::ostringstream text;
    if (picture.size_px.empty() && picture.whole)
        text << (torn ? "is torn off before its picture begins" : "is damaged in its header");
    else if (torn)
        text << "is torn off: " << share << " of the picture is missing";
    else  // where damage was noticed is not where it begins
        text << "is damaged: part of the picture cannot be trusted";
    text << "; copy it again from the camera or card.";
    return text.str();
}

// Throws for what cannot be used; a warning for what nearly whole pictures lack; else nothing.
std::string judge(const fs::path& file, const std::string& format, const DecodedPicture& picture,
                  double max_pixels)
{
    switch (picture.fault) {
        case PictureFault::None:
            return {};
        case PictureFault::TooLarge:
            refuse(file, tooLarge(picture, max_pixels));
        case PictureFault::Unsupported:
            refuse(file, "is a " + format +
                             " of a rare kind; save it again as an ordinary JPEG or "
                             "as PNG.");
        case PictureFault::CameraRaw:
            refuse(file, "is a camera raw file; develop it and save it as TIFF or JPEG.");
        case PictureFault::Moving:
            refuse(file, "is a moving picture; save the frame that shows the stamp as PNG.");
        case PictureFault::Torn:
        case PictureFault::Damaged:
            break;
    }
    if (picture.pixels.empty() || picture.whole.value_or(0) < enough)
        refuse(file, whatIsLacking(picture));
    return sentenceAbout(file, whatIsLacking(picture));
}

std::vector<std::string> warningsAbout(const fs::path& file, const std::string& lacking,
                                       const DecodedPicture& picture)
{
    std::vector<std::string> warnings;
    if (!lacking.empty())
        warnings.push_back(lacking);
    if (picture.profile_left_out)
        warnings.push_back(sentenceAbout(
            file,
            "has a colour profile that cannot be followed, so its colours may be off; save "
            "it again in sRGB if they matter."));
    if (picture.more_pictures)
        warnings.push_back(sentenceAbout(
            file,
            "holds more than one picture, and the first alone was read; save the others as "
            "files of their own."));
    return warnings;
}

DecodedPicture decode(const PictureFile& file, double max_pixels)
{
    switch (file.found.kind) {
        case FileKind::Png:
            return decodePng(file.bytes, max_pixels);
        case FileKind::Tiff:
            return decodeTiff(file.bytes, max_pixels);
        case FileKind::WebP:
            return decodeWebP(file.bytes, max_pixels);
        case FileKind::Bmp:
            return decodeBmp(file.bytes, max_pixels);
        case FileKind::Heic:
            return decodeHeic(file.bytes, max_pixels);
        default:
            return decodeJpeg(file.bytes, max_pixels);
    }
}

// The table of JEITA CP-3451 (Exif 2.2), tag 0x0112: what to do to see the stored rows upright.
cv::Mat turnUpright(const cv::Mat& stored, int orientation)
{
    constexpr int mirror_left_right = 1, mirror_top_bottom = 0, half_turn = -1;
    cv::Mat upright;
    if (orientation >= 5)
        cv::transpose(stored, upright);
    else
        upright = stored;
    switch (orientation) {
        case 2:
        case 6:
            cv::flip(upright, upright, mirror_left_right);
            break;
        case 3:
        case 7:
            cv::flip(upright, upright, half_turn);
            break;
        case 4:
        case 8:
            cv::flip(upright, upright, mirror_top_bottom);
            break;
        default:
            break;
    }
    return upright;
}

}  // namespace

Photo loadPhoto(const fs::path& file, const LoadOptions& options)
{
    if (!(options.max_megapixels > 0))
        throw std::invalid_argument("LoadOptions::max_megapixels must be positive");
    const double max_pixels = options.max_megapixels * 1e6;

    const PictureFile read = readPictureFile(file, max_pixels);
    const DecodedPicture picture = decode(read, max_pixels);
    const std::string lacking = judge(file, read.found.name, picture, max_pixels);
    const ExifFacts exif = picture.facts ? *picture.facts : readExif(picture.exif);

    Photo photo;
    photo.pixels = turnUpright(picture.pixels, exif.orientation);
    photo.file = file;
    photo.original_name = file.filename().string();
    photo.sha256 = sha256Hex(read.bytes);
    photo.format = read.found.name;
    photo.exif_orientation = exif.orientation;
    photo.capture = exif.capture;
    photo.warnings = warningsAbout(file, lacking, picture);
    return photo;
}

}  // namespace vision
