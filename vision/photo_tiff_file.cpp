#include "vision/photo_tiff_file.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstring>

namespace vision {
namespace {

int staySilent(TIFF*, void*, const char*, const char*, va_list)
{
    return 1;
}

std::string text(TIFF* tiff, std::uint32_t tag)
{
    const char* value = nullptr;
    if (TIFFGetField(tiff, tag, &value) == 0 || value == nullptr)
        return {};
    return plainText(value);
}

std::optional<double> positive(TIFF* tiff, std::uint32_t tag)
{
    const TIFFField* field = TIFFFindField(tiff, tag, TIFF_ANY);
    if (field == nullptr)
        return std::nullopt;
    double value = 0;
    if (TIFFFieldSetGetSize(field) == sizeof(float)) {
        float single = 0;
        if (TIFFGetField(tiff, tag, &single) == 0)
            return std::nullopt;
        value = single;
    } else if (TIFFGetField(tiff, tag, &value) == 0) {
        return std::nullopt;
    }
    return std::isfinite(value) && value > 0 ? std::optional(value) : std::nullopt;
}

void readExposure(TIFF* tiff, CaptureFacts& facts)
{
    facts.taken_at = isoTime(text(tiff, EXIFTAG_DATETIMEORIGINAL));
    if (facts.taken_at.empty())
        facts.taken_at = isoTime(text(tiff, EXIFTAG_DATETIMEDIGITIZED));
    facts.lens = text(tiff, EXIFTAG_LENSMODEL);
    facts.focal_length_mm = positive(tiff, EXIFTAG_FOCALLENGTH);
    facts.exposure_s = positive(tiff, EXIFTAG_EXPOSURETIME);
    facts.aperture_f = positive(tiff, EXIFTAG_FNUMBER);
    std::uint16_t count = 0;
    const std::uint16_t* speeds = nullptr;
    if (TIFFGetField(tiff, EXIFTAG_ISOSPEEDRATINGS, &count, &speeds) != 0 && count > 0 &&
        speeds != nullptr)
        facts.iso = speeds[0];
}

}  // namespace

tmsize_t TiffFile::read(thandle_t handle, void* to, tmsize_t count)
{
    Source& source = *static_cast<Source*>(handle);
    if (count <= 0 || source.at >= source.bytes.size())
        return 0;
    const std::size_t rest = source.bytes.size() - static_cast<std::size_t>(source.at);
    const std::size_t taken = std::min(rest, static_cast<std::size_t>(count));
    std::memcpy(to, source.bytes.data() + source.at, taken);
    source.at += taken;
    return static_cast<tmsize_t>(taken);
}

toff_t TiffFile::seek(thandle_t handle, toff_t offset, int whence)
{
    Source& source = *static_cast<Source*>(handle);
    if (whence == SEEK_CUR)
        offset += source.at;
    else if (whence == SEEK_END)
        offset += source.bytes.size();
    source.at = offset;
    return offset;
}

TiffFile::TiffFile(std::span<const unsigned char> bytes, tmsize_t most_bytes)
    : source_(std::make_unique<Source>(Source{bytes}))
{
    const std::unique_ptr<TIFFOpenOptions, decltype(&TIFFOpenOptionsFree)> options(
        TIFFOpenOptionsAlloc(), &TIFFOpenOptionsFree);
    TIFFOpenOptionsSetMaxSingleMemAlloc(options.get(), most_bytes);
    TIFFOpenOptionsSetErrorHandlerExtR(options.get(), staySilent, nullptr);
    TIFFOpenOptionsSetWarningHandlerExtR(options.get(), staySilent, nullptr);
    tiff_.reset(TIFFClientOpenExt(
        "picture", "r", source_.get(), &TiffFile::read,
        [](thandle_t, void*, tmsize_t) -> tmsize_t { return 0; }, &TiffFile::seek,
        [](thandle_t) { return 0; },
        [](thandle_t handle) -> toff_t { return static_cast<Source*>(handle)->bytes.size(); },
        [](thandle_t handle, void** base, toff_t* size) {
            const Source& source = *static_cast<Source*>(handle);
            *base = const_cast<unsigned char*>(source.bytes.data());
            *size = source.bytes.size();
            return 1;
        },
        [](thandle_t, void*, toff_t) {}, options.get()));
}

bool TiffFile::isShort() const
{
    const auto& bytes = source_->bytes;
    if (bytes.size() < 8)
        return true;
    if (tiff_ == nullptr) {  // the directory's place stands in bytes 4 to 7
        std::uint64_t directory = 0;
        for (std::size_t i = 0; i < 4; ++i)
            directory = directory << 8 | bytes[bytes[0] == 'M' ? 4 + i : 7 - i];
        return directory + 2 > bytes.size();
    }
    const std::uint32_t count =
        TIFFIsTiled(tiff()) != 0 ? TIFFNumberOfTiles(tiff()) : TIFFNumberOfStrips(tiff());
    for (std::uint32_t i = 0; i < count; ++i) {
        const std::uint64_t at = TIFFGetStrileOffset(tiff(), i);
        const std::uint64_t length = TIFFGetStrileByteCount(tiff(), i);
        if (at > bytes.size() || length > bytes.size() - at)
            return true;
    }
    return false;
}

ExifFacts TiffFile::facts() const
{
    ExifFacts facts;
    std::uint16_t orientation = 1;
    if (TIFFGetField(tiff(), TIFFTAG_ORIENTATION, &orientation) != 0 && orientation >= 1 &&
        orientation <= 8)
        facts.orientation = orientation;
    const std::string camera = cameraName(text(tiff(), TIFFTAG_MAKE), text(tiff(), TIFFTAG_MODEL));
    toff_t exposure = 0;
    if (TIFFGetField(tiff(), TIFFTAG_EXIFIFD, &exposure) != 0 &&
        TIFFReadEXIFDirectory(tiff(), exposure) != 0)
        readExposure(tiff(), facts.capture);
    facts.capture.camera = camera;
    return facts;
}

}  // namespace vision
