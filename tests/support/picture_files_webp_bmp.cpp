#include <stdexcept>

#include <webp/encode.h>
#include <webp/mux.h>

#include "tests/support/picture_files.h"

namespace picture_files {
namespace {

void put(Bytes& to, std::uint32_t value, int count)
{
    for (int i = 0; i < count; ++i)
        to.push_back(static_cast<unsigned char>(value >> (8 * i)));
}

// A row as BMP stores it, filled up to a multiple of four bytes.
Bytes bmpRow(const BmpPicture& picture, int y)
{
    Bytes row(static_cast<std::size_t>((picture.pixels.cols * picture.bits + 31) / 32 * 4), 0);
    for (int x = 0; x < picture.pixels.cols; ++x) {
        const uchar* pixel = picture.pixels.ptr(y, x);
        const auto at = static_cast<std::size_t>(x * picture.bits / 8);
        if (picture.bits <= 8) {
            row[at] = static_cast<unsigned char>(
                row[at] | pixel[0] << (8 - picture.bits - x * picture.bits % 8));
        } else if (picture.bits == 16) {
            const int packed = pixel[2] >> 3 << 11 | pixel[1] >> 2 << 5 | pixel[0] >> 3;
            row[at] = static_cast<unsigned char>(packed);
            row[at + 1] = static_cast<unsigned char>(packed >> 8);
        } else {
            std::copy_n(pixel, picture.bits / 8, row.begin() + static_cast<std::ptrdiff_t>(at));
        }
    }
    return row;
}

void putMasks(Bytes& header, int bits)
{
    const std::vector<std::uint32_t> masks =
        bits == 16 ? std::vector<std::uint32_t>{0xF800, 0x7E0, 0x1F, 0}
                   : std::vector<std::uint32_t>{0xFF0000, 0xFF00, 0xFF, 0xFF000000};
    for (const std::uint32_t mask : masks)
        put(header, mask, 4);
}

WebPData dataOf(const Bytes& bytes)
{
    return {bytes.data(), bytes.size()};
}

}  // namespace

Bytes webp(const cv::Mat& picture, bool lossless)
{
    const cv::Mat stored = picture.isContinuous() ? picture : picture.clone();
    const int stride = static_cast<int>(stored.step[0]);
    std::uint8_t* out = nullptr;
    std::size_t length = 0;
    if (stored.channels() == 4)
        length = lossless
                     ? WebPEncodeLosslessBGRA(stored.data, stored.cols, stored.rows, stride, &out)
                     : WebPEncodeBGRA(stored.data, stored.cols, stored.rows, stride, 90, &out);
    else
        length = lossless
                     ? WebPEncodeLosslessBGR(stored.data, stored.cols, stored.rows, stride, &out)
                     : WebPEncodeBGR(stored.data, stored.cols, stored.rows, stride, 90, &out);
    if (length == 0)
        throw std::runtime_error("libwebp cannot encode a test picture");
    Bytes bytes(out, out + length);
    WebPFree(out);
    return bytes;
}

Bytes webpWith(const Bytes& webp, const Bytes& exif, const Bytes& profile)
{
    const WebPData picture = dataOf(webp), exif_data = dataOf(exif), profile_data = dataOf(profile);
    WebPMux* mux = WebPMuxCreate(&picture, 1);
    if (!exif.empty())
        WebPMuxSetChunk(mux, "EXIF", &exif_data, 1);
    if (!profile.empty())
        WebPMuxSetChunk(mux, "ICCP", &profile_data, 1);
    WebPData whole{};
    if (WebPMuxAssemble(mux, &whole) != WEBP_MUX_OK)
        throw std::runtime_error("libwebpmux cannot put a test picture together");
    Bytes bytes(whole.bytes, whole.bytes + whole.size);
    WebPDataClear(&whole);
    WebPMuxDelete(mux);
    return bytes;
}

// BITMAPFILEHEADER, then BITMAPINFOHEADER, or BITMAPV5HEADER where there is a mask or a profile.
Bytes bmp(const BmpPicture& picture)
{
    const bool masked = picture.bits == 16 || picture.bits == 32;
    const std::uint32_t length = masked || !picture.profile.empty() ? 124 : 40;
    const auto pixels_at = 14 + length + 4 * static_cast<std::uint32_t>(picture.palette_bgr.size());
    Bytes rows;
    for (int i = 0; i < picture.pixels.rows; ++i) {
        const Bytes row = bmpRow(picture, picture.from_top ? i : picture.pixels.rows - 1 - i);
        rows.insert(rows.end(), row.begin(), row.end());
    }
    Bytes bytes = {'B', 'M'};
    put(bytes, pixels_at + static_cast<std::uint32_t>(rows.size() + picture.profile.size()), 4);
    put(bytes, 0, 4);
    put(bytes, pixels_at, 4);
    put(bytes, length, 4);
    put(bytes, static_cast<std::uint32_t>(picture.pixels.cols), 4);
    put(bytes,
        static_cast<std::uint32_t>(picture.from_top ? -picture.pixels.rows : picture.pixels.rows),
        4);
    put(bytes, 1, 2);
    put(bytes, static_cast<std::uint32_t>(picture.bits), 2);
    put(bytes, masked ? 3 : 0, 4);
    bytes.resize(14 + 40, 0);
    if (length > 40) {
        putMasks(bytes, masked ? picture.bits : 32);
        put(bytes, picture.profile.empty() ? 0x73524742 : 0x4D424544, 4);  // "sRGB" or "MBED"
        bytes.resize(14 + 112, 0);
        put(bytes, pixels_at - 14 + static_cast<std::uint32_t>(rows.size()), 4);
        put(bytes, static_cast<std::uint32_t>(picture.profile.size()), 4);
        bytes.resize(14 + 124, 0);
    }
    for (const cv::Vec3b& colour : picture.palette_bgr)
        put(bytes, static_cast<std::uint32_t>(colour[0] | colour[1] << 8 | colour[2] << 16), 4);
    bytes.insert(bytes.end(), rows.begin(), rows.end());
    bytes.insert(bytes.end(), picture.profile.begin(), picture.profile.end());
    return bytes;
}

}  // namespace picture_files
