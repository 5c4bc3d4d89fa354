#include "tests/support/picture_files.h"

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <stdexcept>

#include <jpeglib.h>
#include <png.h>
#include <zlib.h>
#include <opencv2/imgcodecs.hpp>

namespace picture_files {
namespace {

void append(Bytes& to, const Bytes& what)
{
    to.insert(to.end(), what.begin(), what.end());
}

Bytes bigEndian32(std::uint32_t value)
{
    return {static_cast<unsigned char>(value >> 24), static_cast<unsigned char>(value >> 16),
            static_cast<unsigned char>(value >> 8), static_cast<unsigned char>(value)};
}

Bytes pngChunk(const std::string& type, const Bytes& data)
{
    Bytes typed(type.begin(), type.end());
    append(typed, data);
    Bytes chunk;
    chunk.reserve(typed.size() + 8);
    append(chunk, bigEndian32(static_cast<std::uint32_t>(data.size())));
    append(chunk, typed);
    append(chunk, bigEndian32(static_cast<std::uint32_t>(
                      crc32(0, typed.data(), static_cast<uInt>(typed.size())))));
    return chunk;
}

// Behind the start marker, in front of everything else.
Bytes jpegWithSegment(const Bytes& jpeg, unsigned char marker, const Bytes& name,
                      const Bytes& content)
{
    const std::size_t length = 2 + name.size() + content.size();
    const Bytes head = {0xFF, marker, static_cast<unsigned char>(length >> 8),
                        static_cast<unsigned char>(length & 255)};
    Bytes bytes;
    bytes.reserve(jpeg.size() + 2 + length);
    bytes.assign(jpeg.begin(), jpeg.begin() + 2);
    append(bytes, head);
    append(bytes, name);
    append(bytes, content);
    bytes.insert(bytes.end(), jpeg.begin() + 2, jpeg.end());
    return bytes;
}

Bytes encode(const char* extension, const cv::Mat& picture, const std::vector<int>& settings)
{
    Bytes bytes;
    if (!cv::imencode(extension, picture, bytes, settings))
        throw std::runtime_error("OpenCV cannot encode a test picture");
    return bytes;
}

void appendToBytes(png_structp png, png_bytep data, png_size_t length)
{
    auto& bytes = *static_cast<Bytes*>(png_get_io_ptr(png));
    bytes.insert(bytes.end(), data, data + length);
}

}  // namespace

void write(const std::filesystem::path& file, const Bytes& bytes)
{
    std::ofstream stream(file, std::ios::binary);
    stream.write(reinterpret_cast<const char*>(bytes.data()),
                 static_cast<std::streamsize>(bytes.size()));
    if (!stream)
        throw std::runtime_error("cannot write " + file.string());
}

void write(const std::filesystem::path& file, const std::string& text)
{
    write(file, Bytes(text.begin(), text.end()));
}

Bytes jpeg(const cv::Mat& picture, int quality)
{
    return encode(".jpg", picture, {cv::IMWRITE_JPEG_QUALITY, quality});
}

Bytes progressiveJpeg(const cv::Mat& picture, int quality)
{
    return encode(".jpg", picture,
                  {cv::IMWRITE_JPEG_QUALITY, quality, cv::IMWRITE_JPEG_PROGRESSIVE, 1});
}

Bytes png(const cv::Mat& picture)
{
    return encode(".png", picture, {});
}

Bytes cmykJpeg(const cv::Mat& cmyk, bool as_adobe)
{
    jpeg_compress_struct writer{};
    jpeg_error_mgr errors{};
    writer.err = jpeg_std_error(&errors);
    jpeg_create_compress(&writer);
    unsigned char* memory = nullptr;
    unsigned long length = 0;
    jpeg_mem_dest(&writer, &memory, &length);
    writer.image_width = static_cast<JDIMENSION>(cmyk.cols);
    writer.image_height = static_cast<JDIMENSION>(cmyk.rows);
    writer.input_components = 4;
    writer.in_color_space = JCS_CMYK;
    jpeg_set_defaults(&writer);
    jpeg_set_quality(&writer, 95, TRUE);
    writer.write_Adobe_marker = as_adobe ? TRUE : FALSE;
    jpeg_start_compress(&writer, TRUE);
    cv::Mat stored = as_adobe ? cv::Mat(cv::Scalar::all(255) - cmyk) : cmyk.clone();
    while (writer.next_scanline < writer.image_height) {
        JSAMPROW row = stored.ptr(static_cast<int>(writer.next_scanline));
        jpeg_write_scanlines(&writer, &row, 1);
    }
    jpeg_finish_compress(&writer);
    Bytes bytes(memory, memory + length);
    jpeg_destroy_compress(&writer);
    std::free(memory);
    return bytes;
}

Bytes palettePng(const cv::Mat& indices, const std::vector<cv::Vec3b>& palette_bgr,
                 const std::vector<unsigned char>& alpha, bool interlaced)
{
    Bytes bytes;
    png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, nullptr);
    png_infop info = png_create_info_struct(png);
    png_set_write_fn(png, &bytes, appendToBytes, nullptr);
    png_set_IHDR(png, info, static_cast<png_uint_32>(indices.cols),
                 static_cast<png_uint_32>(indices.rows), 8, PNG_COLOR_TYPE_PALETTE,
                 interlaced ? PNG_INTERLACE_ADAM7 : PNG_INTERLACE_NONE,
                 PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
    std::vector<png_color> palette;
    for (const cv::Vec3b& bgr : palette_bgr)
        palette.push_back({bgr[2], bgr[1], bgr[0]});
    png_set_PLTE(png, info, palette.data(), static_cast<int>(palette.size()));
    if (!alpha.empty())
        png_set_tRNS(png, info, alpha.data(), static_cast<int>(alpha.size()), nullptr);
    png_write_info(png, info);
    std::vector<png_bytep> rows;
    cv::Mat stored = indices.clone();
    for (int y = 0; y < stored.rows; ++y)
        rows.push_back(stored.ptr(y));
    png_write_image(png, rows.data());
    png_write_end(png, info);
    png_destroy_write_struct(&png, &info);
    return bytes;
}

Bytes blackPng(int width_px, int height_px)
{
    z_stream deflating{};
    deflateInit(&deflating, 1);
    const std::vector<unsigned char> row((static_cast<std::size_t>(width_px) + 7) / 8 + 1, 0);
    Bytes packed;
    Bytes buffer(1 << 16);
    for (int y = 0; y <= height_px; ++y) {
        const bool last = y == height_px;
        deflating.next_in = const_cast<unsigned char*>(row.data());
        deflating.avail_in = last ? 0 : static_cast<uInt>(row.size());
        do {
            deflating.next_out = buffer.data();
            deflating.avail_out = static_cast<uInt>(buffer.size());
            deflate(&deflating, last ? Z_FINISH : Z_NO_FLUSH);
            packed.insert(packed.end(), buffer.begin(),
                          buffer.end() - static_cast<std::ptrdiff_t>(deflating.avail_out));
        } while (deflating.avail_out == 0);
    }
    deflateEnd(&deflating);

    Bytes header;
    header.reserve(13);
    append(header, bigEndian32(static_cast<std::uint32_t>(width_px)));
    append(header, bigEndian32(static_cast<std::uint32_t>(height_px)));
    append(header, {1, 0, 0, 0, 0});  // one bit, grey, deflate, no filter kind, not interlaced
    Bytes bytes = {0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    append(bytes, pngChunk("IHDR", header));
    append(bytes, pngChunk("IDAT", packed));
    append(bytes, pngChunk("IEND", {}));
    return bytes;
}

Bytes jpegWithExif(const Bytes& jpeg, const Bytes& exif)
{
    return jpegWithSegment(jpeg, 0xE1, {'E', 'x', 'i', 'f', 0, 0}, exif);
}

Bytes pngWithExif(const Bytes& png, const Bytes& exif)
{
    constexpr std::ptrdiff_t signature_and_header = 8 + 25;
    Bytes bytes(png.begin(), png.begin() + signature_and_header);
    append(bytes, pngChunk("eXIf", exif));
    bytes.insert(bytes.end(), png.begin() + signature_and_header, png.end());
    return bytes;
}

Bytes jpegWithProfile(const Bytes& jpeg, const Bytes& profile)
{
    return jpegWithSegment(
        jpeg, 0xE2, {'I', 'C', 'C', '_', 'P', 'R', 'O', 'F', 'I', 'L', 'E', 0, 1, 1}, profile);
}

Bytes pngWithProfile(const Bytes& png, const Bytes& profile)
{
    Bytes packed(compressBound(profile.size()));
    uLongf length = packed.size();
    compress(packed.data(), &length, profile.data(), profile.size());
    packed.resize(length);
    Bytes content = {'m', 'a', 'd', 'e', 0, 0};
    append(content, packed);
    constexpr std::ptrdiff_t signature_and_header = 8 + 25;
    Bytes bytes(png.begin(), png.begin() + signature_and_header);
    append(bytes, pngChunk("iCCP", content));
    bytes.insert(bytes.end(), png.begin() + signature_and_header, png.end());
    return bytes;
}

}  // namespace picture_files
