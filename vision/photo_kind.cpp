#include "vision/photo_kind.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>

namespace vision {
namespace {

using namespace std::string_view_literals;

struct Signature {
    std::size_t offset;
    std::string_view bytes;
    FileKind kind;
    const char* name;
};

// From the formats' own specifications.
constexpr std::array signatures = {
    Signature{0, "\xFF\xD8\xFF"sv, FileKind::Jpeg, "JPEG"},
    Signature{0, "\x89PNG\r\n\x1A\n"sv, FileKind::Png, "PNG"},
    Signature{8, "CR\2"sv, FileKind::OtherPicture, "camera raw"},  // in front of TIFF, its disguise
    Signature{0, "II*\0"sv, FileKind::Tiff, "TIFF"},
    Signature{0, "MM\0*"sv, FileKind::Tiff, "TIFF"},
    Signature{0, "II+\0"sv, FileKind::Tiff, "TIFF"},
    Signature{0, "MM\0+"sv, FileKind::Tiff, "TIFF"},
    Signature{8, "WEBP"sv, FileKind::WebP, "WebP"},
    Signature{4, "ftypheic"sv, FileKind::Heic, "HEIC"},
    Signature{4, "ftypheix"sv, FileKind::Heic, "HEIC"},
    Signature{4, "ftypheim"sv, FileKind::Heic, "HEIC"},
    Signature{4, "ftypheis"sv, FileKind::Heic, "HEIC"},
    Signature{4, "ftypmif1"sv, FileKind::Heic, "HEIC"},
    Signature{4, "ftyphev"sv, FileKind::OtherPicture, "moving HEIC"},
    Signature{4, "ftypmsf"sv, FileKind::OtherPicture, "moving HEIC"},
    Signature{4, "ftypavi"sv, FileKind::OtherPicture, "AVIF"},
    Signature{4, "ftypcrx"sv, FileKind::OtherPicture, "camera raw"},
    Signature{0, "GIF8"sv, FileKind::OtherPicture, "GIF"},
    Signature{0, "\0\0\0\x0CjP  "sv, FileKind::OtherPicture, "JPEG 2000"},
    Signature{0, "\0\0\0\x0CJXL "sv, FileKind::OtherPicture, "JPEG XL"},
    Signature{0, "\xFF\x0A"sv, FileKind::OtherPicture, "JPEG XL"},
    Signature{0, "%PDF"sv, FileKind::OtherPicture, "PDF"},
    Signature{6, "\0\0\0\0"sv, FileKind::Bmp, "BMP"},  // and "BM" before, see below
};

bool holds(std::span<const unsigned char> head, std::size_t offset, std::string_view bytes)
{
    return head.size() >= offset + bytes.size() &&
           std::equal(bytes.begin(), bytes.end(),
                      head.begin() + static_cast<std::ptrdiff_t>(offset),
                      [](char a, unsigned char b) { return static_cast<unsigned char>(a) == b; });
}

bool isTextByte(unsigned char byte)
{
    return byte >= 0x20 || byte == '\t' || byte == '\n' || byte == '\r' || byte == '\f';
}

}  // namespace

FileKindFound fileKind(std::span<const unsigned char> head)
{
    for (const Signature& signature : signatures) {
        if (signature.name == "BMP"sv && !holds(head, 0, "BM"))
            continue;
        if (holds(head, signature.offset, signature.bytes))
            return {signature.kind, signature.name};
    }
    if (!head.empty() && std::all_of(head.begin(), head.end(), isTextByte))
        return {FileKind::Text, {}};
    if (std::all_of(head.begin(), head.end(), [](unsigned char byte) { return byte == 0; }))
        return {FileKind::Zeros, {}};
    return {FileKind::Unknown, {}};
}

}  // namespace vision
