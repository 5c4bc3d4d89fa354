#include <cstdio>
#include <cstring>
#include <stdexcept>

#include <tiffio.h>

#include "tests/support/picture_files.h"

namespace picture_files {
namespace {

struct Memory {
    Bytes bytes;
    std::size_t at = 0;
};

tmsize_t writeSome(thandle_t handle, void* from, tmsize_t count)
{
    Memory& memory = *static_cast<Memory*>(handle);
    const auto length = static_cast<std::size_t>(count);
    if (memory.bytes.size() < memory.at + length)
        memory.bytes.resize(memory.at + length);
    std::memcpy(memory.bytes.data() + memory.at, from, length);
    memory.at += length;
    return count;
}

tmsize_t readSome(thandle_t handle, void* to, tmsize_t count)
{
    Memory& memory = *static_cast<Memory*>(handle);
    const std::size_t rest = memory.bytes.size() - std::min(memory.at, memory.bytes.size());
    const std::size_t length = std::min(rest, static_cast<std::size_t>(count));
    std::memcpy(to, memory.bytes.data() + memory.at, length);
    memory.at += length;
    return static_cast<tmsize_t>(length);
}

toff_t seekTo(thandle_t handle, toff_t offset, int whence)
{
    Memory& memory = *static_cast<Memory*>(handle);
    if (whence == SEEK_CUR)
        offset += memory.at;
    if (whence == SEEK_END)
        offset += memory.bytes.size();
    memory.at = offset;
    return offset;
}

int photometricOf(const TiffPicture& picture)
{
    switch (picture.meaning) {
        case TiffMeaning::MinIsWhite:
            return PHOTOMETRIC_MINISWHITE;
        case TiffMeaning::Inks:
            return PHOTOMETRIC_SEPARATED;
        case TiffMeaning::Palette:
            return PHOTOMETRIC_PALETTE;
        case TiffMeaning::Plain:
            break;
    }
    return picture.samples.channels() < 3 ? PHOTOMETRIC_MINISBLACK : PHOTOMETRIC_RGB;
}

void setPalette(TIFF* tiff, const std::vector<cv::Vec3b>& palette_bgr)
{
    std::vector<std::uint16_t> red(256), green(256), blue(256);
    for (std::size_t i = 0; i < palette_bgr.size(); ++i) {
        red[i] = static_cast<std::uint16_t>(257 * palette_bgr[i][2]);
        green[i] = static_cast<std::uint16_t>(257 * palette_bgr[i][1]);
        blue[i] = static_cast<std::uint16_t>(257 * palette_bgr[i][0]);
    }
    TIFFSetField(tiff, TIFFTAG_COLORMAP, red.data(), green.data(), blue.data());
}

void setTags(TIFF* tiff, const TiffPicture& picture)
{
    const cv::Mat& samples = picture.samples;
    const int channels = samples.channels();
    TIFFSetField(tiff, TIFFTAG_IMAGEWIDTH, samples.cols);
    TIFFSetField(tiff, TIFFTAG_IMAGELENGTH, samples.rows);
    TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, samples.depth() == CV_16U ? 16 : 8);
    TIFFSetField(tiff, TIFFTAG_SAMPLESPERPIXEL, channels);
    TIFFSetField(tiff, TIFFTAG_PHOTOMETRIC, photometricOf(picture));
    TIFFSetField(tiff, TIFFTAG_PLANARCONFIG,
                 picture.planes_apart ? PLANARCONFIG_SEPARATE : PLANARCONFIG_CONTIG);
    TIFFSetField(tiff, TIFFTAG_COMPRESSION, COMPRESSION_ADOBE_DEFLATE);
    TIFFSetField(tiff, TIFFTAG_ORIENTATION, picture.orientation);
    if (channels % 2 == 0 && picture.meaning == TiffMeaning::Plain) {
        const std::uint16_t alpha =
            picture.premultiplied ? EXTRASAMPLE_ASSOCALPHA : EXTRASAMPLE_UNASSALPHA;
        TIFFSetField(tiff, TIFFTAG_EXTRASAMPLES, 1, &alpha);
    }
    if (picture.meaning == TiffMeaning::Palette)
        setPalette(tiff, picture.palette_bgr);
    if (picture.is_preview)
        TIFFSetField(tiff, TIFFTAG_SUBFILETYPE, FILETYPE_REDUCEDIMAGE);
    if (!picture.profile.empty())
        TIFFSetField(tiff, TIFFTAG_ICCPROFILE, static_cast<std::uint32_t>(picture.profile.size()),
                     picture.profile.data());
    for (const ExifText& text : picture.facts.camera)
        TIFFSetField(tiff, text.tag, text.text.c_str());
    if (picture.tiled) {
        TIFFSetField(tiff, TIFFTAG_TILEWIDTH, 16);
        TIFFSetField(tiff, TIFFTAG_TILELENGTH, 16);
    } else {
        TIFFSetField(tiff, TIFFTAG_ROWSPERSTRIP, picture.rows_a_strip);
    }
}

void writeTiles(TIFF* tiff, const cv::Mat& samples)
{
    for (int y = 0; y < samples.rows; y += 16)
        for (int x = 0; x < samples.cols; x += 16) {
            const cv::Rect place = cv::Rect(x, y, 16, 16) & cv::Rect({}, samples.size());
            cv::Mat tile(16, 16, samples.type(), cv::Scalar::all(0));
            samples(place).copyTo(tile(cv::Rect({}, place.size())));
            TIFFWriteTile(tiff, tile.data, static_cast<std::uint32_t>(x),
                          static_cast<std::uint32_t>(y), 0, 0);
        }
}

void writeRows(TIFF* tiff, const TiffPicture& picture)
{
    std::vector<cv::Mat> planes = {picture.samples.clone()};
    if (picture.planes_apart)
        cv::split(picture.samples, planes);
    for (std::size_t plane = 0; plane < planes.size(); ++plane)
        for (int y = 0; y < planes[plane].rows; ++y)
            TIFFWriteScanline(tiff, planes[plane].ptr(y), static_cast<std::uint32_t>(y),
                              static_cast<std::uint16_t>(plane));
}

// The directory of the exposure stands behind the picture's, which then points to it.
void writeExposure(TIFF* tiff, const ExifBlock& facts)
{
    TIFFWriteDirectory(tiff);
    TIFFCreateEXIFDirectory(tiff);
    for (const ExifText& text : facts.exposure)
        TIFFSetField(tiff, text.tag, text.text.c_str());
    for (const ExifRational& value : facts.exposure_rationals)
        TIFFSetField(tiff, value.tag, static_cast<double>(value.numerator) / value.denominator);
    if (const auto speed = static_cast<std::uint16_t>(facts.iso); speed != 0)
        TIFFSetField(tiff, EXIFTAG_ISOSPEEDRATINGS, 1, &speed);
    std::uint64_t at = 0;
    TIFFWriteCustomDirectory(tiff, &at);
    TIFFSetDirectory(tiff, 0);
    TIFFSetField(tiff, TIFFTAG_EXIFIFD, at);
}

}  // namespace

Bytes tiff(const TiffPicture& picture)
{
    Memory memory;
    TIFF* tiff = TIFFClientOpen(
        "made", "w", &memory, readSome, writeSome, seekTo, [](thandle_t) { return 0; },
        [](thandle_t handle) -> toff_t { return static_cast<Memory*>(handle)->bytes.size(); },
        [](thandle_t, void**, toff_t*) { return 0; }, [](thandle_t, void*, toff_t) {});
    if (tiff == nullptr)
        throw std::runtime_error("libtiff cannot write a test picture");
    for (int page = 0; page < picture.pages; ++page) {
        setTags(tiff, picture);
        if (picture.tiled)
            writeTiles(tiff, picture.samples);
        else
            writeRows(tiff, picture);
        if (!picture.facts.exposure.empty())
            writeExposure(tiff, picture.facts);
        if (picture.pages > 1)
            TIFFWriteDirectory(tiff);
    }
    TIFFClose(tiff);
    return memory.bytes;
}

}  // namespace picture_files
