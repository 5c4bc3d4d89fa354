#include "vision/photo_file.h"

#include <algorithm>
#include <cerrno>
#include <cmath>
#include <cstring>
#include <fstream>
#include <iomanip>
#include <sstream>
#include <system_error>

#include "vision/image_error.h"
#include "vision/photo_heic.h"

namespace vision {
namespace {

namespace fs = std::filesystem;

constexpr const char* not_there =
    "is not there; check the name, and whether the file was moved or its card taken out.";

std::string kindsToName()
{
    return canDecodeHeic() ? "name a JPEG, PNG, TIFF, WebP, BMP or HEIC file."
                           : "name a JPEG, PNG, TIFF, WebP or BMP file.";
}

void requireRegularFile(const fs::path& file)
{
    std::error_code error;
    const fs::file_status status = fs::status(file, error);
    switch (status.type()) {
        case fs::file_type::regular:
            return;
        case fs::file_type::not_found:
            refuse(file, not_there);
        case fs::file_type::directory:
            refuse(file, "is a folder; name the photographs in it.");
        case fs::file_type::none:
            refuse(file, "cannot be reached (" + error.message() +
                             "); check the name and the rights of its folder.");
        default:
            refuse(file, "is not an ordinary file; " + kindsToName());
    }
}

void requireKnownKind(const fs::path& file, const FileKindFound& found)
{
    switch (found.kind) {
        case FileKind::Jpeg:
        case FileKind::Png:
        case FileKind::Tiff:
        case FileKind::WebP:
        case FileKind::Bmp:
            return;
        case FileKind::Heic:
            if (canDecodeHeic())
                return;
            refuse(file,
                   "is a HEIC file, and this build has no decoder for it; save it as JPEG, "
                   "or install libheif-dev and build again.");
        case FileKind::OtherPicture:
            refuse(file, (found.name == "AVIF" ? "is an " : "is a ") + found.name +
                             " file; save it as JPEG or PNG.");
        case FileKind::Text:
            refuse(file, "holds text, not a picture, whatever its name says; " + kindsToName());
        case FileKind::Zeros:
            refuse(file, "holds nothing but zeros; copy it again from the camera or card.");
        case FileKind::Unknown:
            break;
    }
    refuse(file, "is not a picture of a known kind; save it as JPEG or PNG.");
}

std::vector<unsigned char> readSome(std::ifstream& stream, std::uintmax_t count)
{
    std::vector<unsigned char> bytes(count);
    stream.read(reinterpret_cast<char*>(bytes.data()), static_cast<std::streamsize>(count));
    bytes.resize(static_cast<std::size_t>(stream.gcount()));
    return bytes;
}

std::ifstream opened(const fs::path& file)
{
    requireRegularFile(file);
    errno = 0;
    std::ifstream stream(file, std::ios::binary);
    if (!stream && errno == ENOENT)
        refuse(file, not_there);
    if (!stream)
        refuse(file, std::string("cannot be opened (") + std::strerror(errno) +
                         "); check who may read it.");
    return stream;
}

}  // namespace

std::string sentenceAbout(const fs::path& file, const std::string& trouble_and_remedy)
{
    return '"' + file.string() + "\" " + trouble_and_remedy;
}

void refuse(const fs::path& file, const std::string& trouble_and_remedy)
{
    throw ImageError(sentenceAbout(file, trouble_and_remedy));
}

std::string megapixels(double pixels)
{
    constexpr int digits = 3;  // as many as matter; small limits are for tests and thumbnails
    const double millions = pixels / 1e6;
    std::ostringstream text;
    text << std::setprecision(digits);
    if (millions < 1000)
        text << millions;
    else
        text << std::llround(millions);
    text << " megapixels";
    return text.str();
}

PictureFile readPictureFile(const fs::path& file, double max_pixels)
{
    std::ifstream stream = opened(file);
    std::error_code error;
    const std::uintmax_t size = fs::file_size(file, error);
    if (error)
        refuse(file, not_there);
    if (size == 0)
        refuse(file, "is empty; copy it again from the camera or card.");

    constexpr std::uintmax_t head = 512;
    PictureFile picture{readSome(stream, std::min(size, head)), {}};
    const bool unreadable = picture.bytes.empty();
    picture.found = fileKind(picture.bytes);
    if (!unreadable)
        requireKnownKind(file, picture.found);

    constexpr double most_bytes_a_pixel = 8, headers = 64e6;
    if (static_cast<double>(size) > most_bytes_a_pixel * max_pixels + headers)
        refuse(file, "is larger than any picture of " + megapixels(max_pixels) +
                         ", the limit; save a smaller copy.");
    picture.bytes.resize(size);
    stream.read(reinterpret_cast<char*>(picture.bytes.data() + std::min(size, head)),
                static_cast<std::streamsize>(size - std::min(size, head)));
    if (unreadable || !stream)
        refuse(file, "cannot be read to its end; check the disk or card and copy it again.");
    return picture;
}

}  // namespace vision
