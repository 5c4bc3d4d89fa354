#include "vision/photo.h"

#include <cerrno>
#include <cmath>
#include <cstring>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <system_error>

#include "vision/decoded_picture.h"
#include "vision/exif.h"
#include "vision/image_error.h"
#include "vision/photo_jpeg.h"
#include "vision/photo_kind.h"
#include "vision/photo_png.h"
#include "vision/sha256.h"

namespace vision {
namespace {

namespace fs = std::filesystem;

constexpr double kEnough = 0.9;  // share of a torn picture from which on it is worth looking at

std::string sentence(const fs::path& file, const std::string& trouble_and_remedy)
{
    std::ostringstream text;
    text << '"' << file.string() << "\" " << trouble_and_remedy;
    return text.str();
}

[[noreturn]] void refuse(const fs::path& file, const std::string& trouble_and_remedy)
{
    throw ImageError(sentence(file, trouble_and_remedy));
}

void requireRegularFile(const fs::path& file)
{
    std::error_code error;
    const fs::file_status status = fs::status(file, error);
    switch (status.type()) {
        case fs::file_type::regular:
            return;
        case fs::file_type::not_found:
            refuse(file, "is not there; check the name and the folder.");
        case fs::file_type::directory:
            refuse(file, "is a folder; name the photographs in it.");
        case fs::file_type::none:
            refuse(file, "cannot be reached (" + error.message() +
                             "); check the name and the rights of its folder.");
        default:
            refuse(file, "is not an ordinary file; name a JPEG or PNG file.");
    }
}

std::vector<unsigned char> readSome(std::ifstream& stream, std::uintmax_t count)
{
    std::vector<unsigned char> bytes(count);
    stream.read(reinterpret_cast<char*>(bytes.data()), static_cast<std::streamsize>(count));
    bytes.resize(static_cast<std::size_t>(stream.gcount()));
    return bytes;
}

void requireKnownKind(const fs::path& file, const FileKindFound& found)
{
    switch (found.kind) {
        case FileKind::Jpeg:
        case FileKind::Png:
            return;
        case FileKind::OtherPicture:
            refuse(file, "is a " + found.name + " file; save it as JPEG or PNG.");
        case FileKind::Text:
            refuse(file, "holds text, not a picture; name a JPEG or PNG file.");
        case FileKind::Zeros:
            refuse(file, "holds nothing but zeros; copy it again from the camera or card.");
        case FileKind::Unknown:
            break;
    }
    refuse(file, "is not a JPEG or PNG picture; save it as JPEG or PNG.");
}

std::string megapixels(double pixels)
{
    std::ostringstream text;
    text << std::llround(pixels / 1e6) << " megapixels";
    return text.str();
}

struct FileBytes {
    std::vector<unsigned char> bytes;
    FileKindFound found;
};

// The whole file, once its first bytes say that it is worth reading.
FileBytes readPicture(const fs::path& file, double max_pixels)
{
    requireRegularFile(file);
    errno = 0;
    std::ifstream stream(file, std::ios::binary);
    if (!stream)
        refuse(file, std::string("cannot be opened (") + std::strerror(errno) +
                         "); check who may read it.");
    std::error_code error;
    const std::uintmax_t size = fs::file_size(file, error);
    if (error || size == 0)
        refuse(file, "is empty; copy it again from the camera or card.");

    FileBytes read{readSome(stream, std::min<std::uintmax_t>(size, 512)), {}};
    read.found = fileKind(read.bytes);
    requireKnownKind(file, read.found);

    constexpr double kMostBytesAPixel = 8, kHeaders = 64e6;
    if (static_cast<double>(size) > kMostBytesAPixel * max_pixels + kHeaders)
        refuse(file, "is larger than any picture of " + megapixels(max_pixels) +
                         ", the limit; save a smaller copy.");
    const auto rest = readSome(stream, size - read.bytes.size());
    read.bytes.insert(read.bytes.end(), rest.begin(), rest.end());
    if (stream.bad() || read.bytes.size() != size)
        refuse(file, "cannot be read to its end; check the disk or card and copy it again.");
    return read;
}

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
         << "; save a smaller copy or a part of it.";
    return text.str();
}

// What a torn or damaged picture lacks, and the remedy.
std::string whatIsLacking(const DecodedPicture& picture)
{
    const bool torn = picture.fault == PictureFault::Torn;
    std::ostringstream text;
    if (picture.size_px.empty())
        text << (torn ? "is torn off before its picture begins" : "is damaged in its header");
    else
        text << (torn ? "is torn off: " : "is damaged: ") << percent(1 - picture.whole)
             << (torn ? " of the picture is missing" : " of the picture cannot be trusted");
    text << "; copy it again from the camera or card.";
    return text.str();
}

// Throws for what cannot be used; a warning for what nearly whole pictures lack; else nothing.
std::string judge(const fs::path& file, const DecodedPicture& picture, double max_pixels)
{
    switch (picture.fault) {
        case PictureFault::None:
            return {};
        case PictureFault::TooLarge:
            refuse(file, tooLarge(picture, max_pixels));
        case PictureFault::Unsupported:
            refuse(file, "is a JPEG of a rare kind; save it again as an ordinary JPEG or as PNG.");
        case PictureFault::Torn:
        case PictureFault::Damaged:
            break;
    }
    if (picture.pixels.empty() || picture.whole < kEnough)
        refuse(file, whatIsLacking(picture));
    return sentence(file, whatIsLacking(picture));
}

// The table of JEITA CP-3451 (Exif 2.2), tag 0x0112: what to do to see the stored rows upright.
cv::Mat turnUpright(const cv::Mat& stored, int orientation)
{
    constexpr int kMirrorLeftRight = 1, kMirrorTopBottom = 0, kHalfTurn = -1;
    cv::Mat upright;
    if (orientation >= 5)
        cv::transpose(stored, upright);
    else
        upright = stored;
    switch (orientation) {
        case 2:
        case 6:
            cv::flip(upright, upright, kMirrorLeftRight);
            break;
        case 3:
        case 7:
            cv::flip(upright, upright, kHalfTurn);
            break;
        case 4:
        case 8:
            cv::flip(upright, upright, kMirrorTopBottom);
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

    const FileBytes read = readPicture(file, max_pixels);
    const DecodedPicture picture = read.found.kind == FileKind::Png
                                       ? decodePng(read.bytes, max_pixels)
                                       : decodeJpeg(read.bytes, max_pixels);
    const std::string warning = judge(file, picture, max_pixels);
    const ExifFacts exif = readExif(picture.exif);

    Photo photo;
    photo.pixels = turnUpright(picture.pixels, exif.orientation);
    photo.file = file;
    photo.sha256 = sha256Hex(read.bytes);
    photo.format = read.found.name;
    photo.exif_orientation = exif.orientation;
    photo.capture = exif.capture;
    if (!warning.empty())
        photo.warnings.push_back(warning);
    return photo;
}

}  // namespace vision
