#include "vision/exif.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <limits>
#include <memory>
#include <vector>

#include <libexif/exif-data.h>

namespace vision {
namespace {

struct FreeExif {
    void operator()(ExifData* data) const { exif_data_unref(data); }
};

const ExifEntry* findEntry(const ExifData& data, ExifIfd ifd, ExifTag tag)
{
    const ExifEntry* entry = exif_content_get_entry(data.ifd[ifd], tag);
    return entry != nullptr && entry->data != nullptr && entry->size > 0 ? entry : nullptr;
}

std::string textOf(const ExifEntry* entry)
{
    if (entry == nullptr || entry->format != EXIF_FORMAT_ASCII)
        return {};
    const auto* begin = reinterpret_cast<const char*>(entry->data);
    return plainText({begin, std::find(begin, begin + entry->size, '\0')});
}

std::optional<double> rationalOf(const ExifData& data, const ExifEntry* entry)
{
    if (entry == nullptr || entry->format != EXIF_FORMAT_RATIONAL || entry->size < 8)
        return std::nullopt;
    const ExifRational value =
        exif_get_rational(entry->data, exif_data_get_byte_order(const_cast<ExifData*>(&data)));
    if (value.numerator == 0 || value.denominator == 0)
        return std::nullopt;
    return static_cast<double>(value.numerator) / static_cast<double>(value.denominator);
}

std::optional<int> wholeNumberOf(const ExifData& data, const ExifEntry* entry)
{
    if (entry == nullptr)
        return std::nullopt;
    const ExifByteOrder order = exif_data_get_byte_order(const_cast<ExifData*>(&data));
    if (entry->format == EXIF_FORMAT_SHORT && entry->size >= 2)
        return exif_get_short(entry->data, order);
    if (entry->format == EXIF_FORMAT_LONG && entry->size >= 4) {
        const ExifLong value = exif_get_long(entry->data, order);
        if (value <= static_cast<ExifLong>(std::numeric_limits<int>::max()))
            return static_cast<int>(value);
    }
    return std::nullopt;
}

CaptureFacts captureOf(const ExifData& data)
{
    const auto camera = [&](ExifTag tag) { return findEntry(data, EXIF_IFD_0, tag); };
    const auto exposure = [&](ExifTag tag) { return findEntry(data, EXIF_IFD_EXIF, tag); };

    CaptureFacts facts;
    facts.taken_at = isoTime(textOf(exposure(EXIF_TAG_DATE_TIME_ORIGINAL)));
    if (facts.taken_at.empty())
        facts.taken_at = isoTime(textOf(exposure(EXIF_TAG_DATE_TIME_DIGITIZED)));
    facts.camera = cameraName(textOf(camera(EXIF_TAG_MAKE)), textOf(camera(EXIF_TAG_MODEL)));
    facts.lens = textOf(exposure(EXIF_TAG_LENS_MODEL));
    facts.focal_length_mm = rationalOf(data, exposure(EXIF_TAG_FOCAL_LENGTH));
    facts.exposure_s = rationalOf(data, exposure(EXIF_TAG_EXPOSURE_TIME));
    facts.aperture_f = rationalOf(data, exposure(EXIF_TAG_FNUMBER));
    facts.iso = wholeNumberOf(data, exposure(EXIF_TAG_ISO_SPEED_RATINGS));
    return facts;
}

}  // namespace

std::string plainText(const std::string& exif_text)
{
    std::string text;
    for (const char letter : exif_text)
        if (letter >= 0x20 && letter < 0x7F)
            text += letter;
    const auto first = text.find_first_not_of(' ');
    if (first == std::string::npos)
        return {};
    return text.substr(first, text.find_last_not_of(' ') - first + 1);
}

std::string isoTime(const std::string& exif_time)
{
    static const std::string pattern = "0000:00:00 00:00:00";
    if (exif_time.size() != pattern.size())
        return {};
    for (std::size_t i = 0; i < pattern.size(); ++i) {
        const bool digit = std::isdigit(static_cast<unsigned char>(exif_time[i])) != 0;
        if (pattern[i] == '0' ? !digit : exif_time[i] != pattern[i])
            return {};
    }
    if (exif_time.starts_with("0000"))
        return {};
    std::string iso = exif_time;
    iso[4] = iso[7] = '-';
    iso[10] = 'T';
    return iso;
}

std::string cameraName(const std::string& maker, const std::string& model)
{
    const bool repeated =
        model.size() >= maker.size() &&
        std::equal(maker.begin(), maker.end(), model.begin(), [](unsigned char a, unsigned char b) {
            return std::tolower(a) == std::tolower(b);
        });
    if (maker.empty() || repeated)
        return model;
    return model.empty() ? maker : maker + " " + model;
}

ExifFacts readExif(std::span<const unsigned char> tiff)
{
    // libexif wants the block as a JPEG carries it; some writers of other formats do so, too.
    std::vector<unsigned char> block = {'E', 'x', 'i', 'f', 0, 0};
    const bool has_prefix =
        tiff.size() >= block.size() && std::equal(block.begin(), block.end(), tiff.begin());
    block.insert(block.end(), tiff.begin() + (has_prefix ? 6 : 0), tiff.end());
    if (block.size() < 6 + 8)
        return {};
    const std::unique_ptr<ExifData, FreeExif> data(exif_data_new());
    if (data == nullptr)
        return {};
    exif_data_unset_option(data.get(), EXIF_DATA_OPTION_FOLLOW_SPECIFICATION);
    exif_data_load_data(data.get(), block.data(), static_cast<unsigned int>(block.size()));

    ExifFacts facts;
    facts.capture = captureOf(*data);
    const auto orientation =
        wholeNumberOf(*data, findEntry(*data, EXIF_IFD_0, EXIF_TAG_ORIENTATION));
    if (orientation && *orientation >= 1 && *orientation <= 8)
        facts.orientation = *orientation;
    return facts;
}

}  // namespace vision
