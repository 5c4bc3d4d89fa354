#include "vision/photo_bmp.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>

#include "vision/photo_colour.h"

// The layout is that of BITMAPFILEHEADER, BITMAPCOREHEADER, BITMAPINFOHEADER, BITMAPV4HEADER and
// BITMAPV5HEADER, all numbers least byte first.
namespace vision {
namespace {

using Bytes = std::span<const unsigned char>;

constexpr std::size_t file_header = 14, core_header = 12, info_header = 40, fifth_header = 124;

// 0 beyond the end: whether the file is long enough is asked once, where the rows are counted.
std::uint32_t number(Bytes bytes, std::size_t at, std::size_t count)
{
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < count && at + i < bytes.size(); ++i)
        value |= static_cast<std::uint32_t>(bytes[at + i]) << (8 * i);
    return value;
}

struct Header {
    std::size_t length = 0, pixels_at = 0;
    std::int64_t width = 0, height = 0;
    bool from_top = false, is_plain = true;
    int bits = 0;
    std::array<std::uint32_t, 4> masks{};  // of blue, green, red, alpha; 0 where there is none
    std::vector<cv::Vec3b> palette;

    std::size_t stride() const
    {
        return (static_cast<std::size_t>(width) * static_cast<std::size_t>(bits) + 31) / 32 * 4;
    }
};

void readMasks(Bytes bytes, Header& header, std::uint32_t compression)
{
    constexpr std::uint32_t masks = 3, masks_with_alpha = 6;
    constexpr std::size_t masks_at = file_header + info_header;
    if (header.bits == 16)
        header.masks = {0x1F, 0x3E0, 0x7C00, 0};
    if (header.bits == 32)
        header.masks = {0xFF, 0xFF00, 0xFF0000, 0};
    if (compression != masks && compression != masks_with_alpha)
        return;
    for (std::size_t i = 0; i < 3; ++i)
        header.masks[i] = number(bytes, masks_at + 4 * (2 - i), 4);
    if (header.length > info_header + 12 || compression == masks_with_alpha)
        header.masks[3] = number(bytes, masks_at + 12, 4);
}

void readPalette(Bytes bytes, Header& header, std::size_t entry_bytes)
{
    if (header.bits > 8)
        return;
    header.palette.resize(std::size_t{1} << header.bits, cv::Vec3b(0, 0, 0));
    const std::size_t begin = file_header + header.length;
    for (std::size_t i = 0; i < header.palette.size(); ++i)
        if (const std::size_t at = begin + i * entry_bytes; at + 3 <= bytes.size())
            header.palette[i] = {bytes[at], bytes[at + 1], bytes[at + 2]};
}

Header readHeader(Bytes bytes)
{
    constexpr std::uint32_t plain = 0, masks = 3, masks_with_alpha = 6;
    Header header;
    header.pixels_at = number(bytes, 10, 4);
    header.length = number(bytes, file_header, 4);
    if (header.length == core_header) {
        header.width = number(bytes, 18, 2);
        header.height = number(bytes, 20, 2);
        header.bits = static_cast<int>(number(bytes, 24, 2));
        readMasks(bytes, header, plain);
        readPalette(bytes, header, 3);
        return header;
    }
    header.width = static_cast<std::int32_t>(number(bytes, 18, 4));
    header.height = static_cast<std::int32_t>(number(bytes, 22, 4));
    header.from_top = header.height < 0;
    header.height = std::abs(header.height);
    header.bits = static_cast<int>(number(bytes, 28, 2));
    const std::uint32_t compression = number(bytes, 30, 4);
    header.is_plain =
        compression == plain || ((compression == masks || compression == masks_with_alpha) &&
                                 (header.bits == 16 || header.bits == 32));
    readMasks(bytes, header, compression);
    readPalette(bytes, header, 4);
    return header;
}

bool isSound(const Header& header)
{
    constexpr std::array depths = {1, 4, 8, 16, 24, 32};
    return (header.length == core_header || header.length >= info_header) && header.width > 0 &&
           header.height > 0 && header.width <= 1'000'000 && header.height <= 1'000'000 &&
           std::find(depths.begin(), depths.end(), header.bits) != depths.end();
}

// The bits under the mask, brought to 0 to 255.
uchar level(std::uint32_t pixel, std::uint32_t mask)
{
    if (mask == 0)
        return 0;
    const int shift = std::countr_zero(mask);
    const std::uint64_t most = mask >> shift;
    return static_cast<uchar>(((pixel & mask) >> shift) * std::uint64_t{255} / most);
}

void readRow(Bytes row, const Header& header, uchar* to, int channels)
{
    const auto bits = static_cast<std::size_t>(header.bits);
    for (std::size_t x = 0; x < static_cast<std::size_t>(header.width); ++x, to += channels) {
        if (bits <= 8) {
            const std::size_t bit = x * bits;
            const unsigned packed = row[bit / 8];
            const unsigned index = packed >> (8 - bits - bit % 8) & ((1U << bits) - 1);
            std::copy_n(header.palette[index].val, 3, to);
        } else if (bits == 24) {
            std::copy_n(row.begin() + static_cast<std::ptrdiff_t>(3 * x), 3, to);
        } else {
            const std::uint32_t pixel = number(row, x * bits / 8, bits / 8);
            for (int c = 0; c < channels; ++c)
                to[c] = level(pixel, header.masks[static_cast<std::size_t>(c)]);
        }
    }
}

std::vector<unsigned char> profileOf(Bytes bytes, const Header& header)
{
    constexpr std::uint32_t embedded = 0x4D424544;  // "MBED"
    if (header.length < fifth_header || number(bytes, file_header + 56, 4) != embedded)
        return {};
    const std::size_t at = file_header + number(bytes, file_header + 112, 4);
    const std::size_t length = number(bytes, file_header + 116, 4);
    if (at > bytes.size() || length > bytes.size() - at)
        return {};
    const Bytes profile = bytes.subspan(at, length);
    return {profile.begin(), profile.end()};
}

// Many writers leave the alpha of an opaque picture at 0.
cv::Mat withoutEmptyAlpha(const cv::Mat& raw)
{
    if (raw.channels() < 4)
        return raw;
    cv::Mat part;
    cv::extractChannel(raw, part, 3);
    if (cv::countNonZero(part) > 0)
        return raw;
    cv::Mat opaque(raw.size(), CV_8UC3);
    cv::mixChannels(raw, opaque, {0, 0, 1, 1, 2, 2});
    return opaque;
}

}  // namespace

DecodedPicture decodeBmp(Bytes bytes, double max_pixels)
{
    DecodedPicture picture;
    const Header header = readHeader(bytes);
    if (!isSound(header)) {
        picture.fault =
            bytes.size() < file_header + info_header ? PictureFault::Torn : PictureFault::Damaged;
        return picture;
    }
    picture.size_px = {static_cast<int>(header.width), static_cast<int>(header.height)};
    if (isOverLimit(picture.size_px, max_pixels) || !header.is_plain) {
        picture.fault = header.is_plain ? PictureFault::TooLarge : PictureFault::Unsupported;
        return picture;
    }
    const std::size_t begin = std::min(header.pixels_at, bytes.size());
    const int rows = static_cast<int>(std::min<std::size_t>(
        static_cast<std::size_t>(header.height), (bytes.size() - begin) / header.stride()));
    picture.whole = static_cast<double>(rows) / picture.size_px.height;
    if (rows < picture.size_px.height)
        picture.fault = PictureFault::Torn;
    cv::Mat raw(picture.size_px, header.masks[3] != 0 ? CV_8UC4 : CV_8UC3, cv::Scalar::all(128));
    for (int y = 0; y < rows; ++y)
        readRow(
            bytes.subspan(begin + static_cast<std::size_t>(y) * header.stride(), header.stride()),
            header, raw.ptr(header.from_top ? y : raw.rows - 1 - y), raw.channels());
    raw = withoutEmptyAlpha(raw);
    const auto profile = profileOf(bytes, header);
    const ToSrgb to_srgb(
        {ColourModel::Bgr, raw.channels() == 4 ? AlphaKind::Straight : AlphaKind::None}, profile);
    picture.profile_left_out = !profile.empty() && !to_srgb.followsProfile();
    picture.pixels = to_srgb.convert(raw);
    return picture;
}

}  // namespace vision
