#include "vision/photo_tiff.h"

#include <algorithm>
#include <array>
#include <vector>

#include <opencv2/imgproc.hpp>

#include "vision/photo_colour.h"
#include "vision/photo_tiff_file.h"

namespace vision {
namespace {

// What the directory says of the samples.
struct Samples {
    std::uint16_t photometric = 0, planes = PLANARCONFIG_CONTIG, bits = 1, count = 1;
    std::uint16_t format = SAMPLEFORMAT_UINT, inks = INKSET_CMYK;
    std::vector<std::uint16_t> extra;
};

Samples samplesOf(TIFF* tiff)
{
    Samples samples;
    TIFFGetField(tiff, TIFFTAG_PHOTOMETRIC, &samples.photometric);
    TIFFGetFieldDefaulted(tiff, TIFFTAG_PLANARCONFIG, &samples.planes);
    TIFFGetFieldDefaulted(tiff, TIFFTAG_BITSPERSAMPLE, &samples.bits);
    TIFFGetFieldDefaulted(tiff, TIFFTAG_SAMPLESPERPIXEL, &samples.count);
    TIFFGetFieldDefaulted(tiff, TIFFTAG_SAMPLEFORMAT, &samples.format);
    TIFFGetFieldDefaulted(tiff, TIFFTAG_INKSET, &samples.inks);
    std::uint16_t extra_count = 0;
    const std::uint16_t* extra = nullptr;
    if (TIFFGetFieldDefaulted(tiff, TIFFTAG_EXTRASAMPLES, &extra_count, &extra) != 0 &&
        extra != nullptr)
        samples.extra.assign(extra, extra + extra_count);
    return samples;
}

// Cameras hide their sensor's data behind a small preview.
bool isCameraRaw(TIFF* tiff, const Samples& samples)
{
    constexpr std::uint16_t sensor_mosaic = 32803, linear_raw = 34892;
    std::uint16_t count = 0;
    const void* value = nullptr;
    std::uint32_t kind = 0;
    const bool has_more = TIFFGetField(tiff, TIFFTAG_SUBIFD, &count, &value) != 0;
    const bool is_preview =
        TIFFGetField(tiff, TIFFTAG_SUBFILETYPE, &kind) != 0 && (kind & FILETYPE_REDUCEDIMAGE) != 0;
    return samples.photometric == sensor_mosaic || samples.photometric == linear_raw ||
           (has_more && is_preview) || TIFFGetField(tiff, TIFFTAG_DNGVERSION, &value) != 0;
}

// How to hand samples to the colours as they are stored: asked for where libtiff's own way to RGB
// loses something, the low byte of 16 bits or the inks that a profile speaks of.
std::optional<SampleLayout> layoutAsStored(const Samples& samples)
{
    const bool inks = samples.photometric == PHOTOMETRIC_SEPARATED;
    const bool grey = samples.photometric == PHOTOMETRIC_MINISBLACK ||
                      samples.photometric == PHOTOMETRIC_MINISWHITE;
    const bool together = samples.planes == PLANARCONFIG_CONTIG || samples.count == 1;
    if (!together || samples.format != SAMPLEFORMAT_UINT || samples.extra.size() > 1 ||
        !(inks || grey || samples.photometric == PHOTOMETRIC_RGB))
        return std::nullopt;
    if (samples.bits != 16 && !(inks && samples.bits == 8))
        return std::nullopt;
    if (inks && (samples.inks != INKSET_CMYK || !samples.extra.empty()))
        return std::nullopt;
    SampleLayout layout{inks ? ColourModel::Cmyk : grey ? ColourModel::Grey : ColourModel::Rgb};
    if (samples.extra == std::vector<std::uint16_t>{EXTRASAMPLE_ASSOCALPHA})
        layout.alpha = AlphaKind::Premultiplied;
    else if (samples.extra == std::vector<std::uint16_t>{EXTRASAMPLE_UNASSALPHA})
        layout.alpha = AlphaKind::Straight;
    else if (!samples.extra.empty())
        return std::nullopt;
    const std::size_t colours = inks ? 4 : grey ? 1 : 3;
    return samples.count == colours + samples.extra.size() ? std::optional(layout) : std::nullopt;
}

class TiffPixels {
public:
    TiffPixels(TIFF* tiff, const Samples& samples, DecodedPicture& picture)
        : tiff_(tiff), samples_(samples), picture_(picture)
    {
        std::uint32_t length = 0;
        const void* data = nullptr;
        if (TIFFGetField(tiff, TIFFTAG_ICCPROFILE, &length, &data) != 0)
            profile_ = {static_cast<const unsigned char*>(data), length};
        block_ = picture.size_px;
        std::uint32_t width = static_cast<std::uint32_t>(block_.width), height = 0;
        if (TIFFIsTiled(tiff) != 0) {
            TIFFGetField(tiff, TIFFTAG_TILEWIDTH, &width);
            TIFFGetField(tiff, TIFFTAG_TILELENGTH, &height);
        } else {
            TIFFGetFieldDefaulted(tiff, TIFFTAG_ROWSPERSTRIP, &height);
            height = std::min(height, static_cast<std::uint32_t>(block_.height));
        }
        const double area = static_cast<double>(width) * height;
        constexpr double padding = 1 << 20;  // a tile may be larger than its small picture
        sound_ = area > 0 && area <= 4.0 * block_.area() + padding;
        if (sound_)
            block_ = {static_cast<int>(width), static_cast<int>(height)};
    }

    // What is missing stays mid-grey, and `whole` says how far it went.
    bool read()
    {
        picture_.pixels = cv::Mat(picture_.size_px, CV_8UC3, cv::Scalar::all(128));
        picture_.whole = 0;
        if (!sound_)
            return false;
        const auto layout = layoutAsStored(samples_);
        return layout ? readAsStored(*layout) : readAsRgb();
    }

private:
    void noteRows(int rows) { picture_.whole = static_cast<double>(rows) / picture_.pixels.rows; }

    bool readAsStored(const SampleLayout& layout)
    {
        const ToSrgb to_srgb(layout, profile_);
        noteProfile(to_srgb);
        cv::Mat block(block_, CV_MAKETYPE(samples_.bits == 16 ? CV_16U : CV_8U, samples_.count));
        const bool tiled = TIFFIsTiled(tiff_) != 0;
        const auto bytes = static_cast<tmsize_t>(block.total() * block.elemSize());
        if ((tiled ? TIFFTileSize(tiff_) : TIFFStripSize(tiff_)) != bytes)
            return false;
        std::uint32_t number = 0;
        for (int y = 0; y < picture_.size_px.height; y += block_.height) {
            for (int x = 0; x < picture_.size_px.width; x += block_.width, ++number) {
                const cv::Rect place = cv::Rect({x, y}, block_) & cv::Rect({}, picture_.size_px);
                const tmsize_t got = tiled ? TIFFReadEncodedTile(tiff_, number, block.data, bytes)
                                           : TIFFReadEncodedStrip(tiff_, number, block.data, bytes);
                if (got < static_cast<tmsize_t>(block.step[0]) * place.height)
                    return false;
                put(to_srgb, block(cv::Rect({}, place.size())), place);
            }
            noteRows(std::min(y + block_.height, picture_.size_px.height));
        }
        return true;
    }

    void put(const ToSrgb& to_srgb, const cv::Mat& block, const cv::Rect& place)
    {
        cv::Mat samples = block;
        if (samples_.photometric == PHOTOMETRIC_MINISWHITE) {
            samples = cv::Mat(cv::Scalar::all(65535) - block);
            if (!samples_.extra.empty())  // only the grey is turned round
                cv::mixChannels(block, samples, {1, 1});
        }
        to_srgb.convert(samples).copyTo(picture_.pixels(place));
    }

    bool readAsRgb()
    {
        TIFFRGBAImage image{};
        std::array<char, 1024> why{};
        constexpr int stop_on_error = 1;
        if (TIFFRGBAImageOK(tiff_, why.data()) == 0 ||
            TIFFRGBAImageBegin(&image, tiff_, stop_on_error, why.data()) == 0) {
            picture_.fault = PictureFault::Unsupported;
            return false;
        }
        // It would turn the rows by the orientation, which is done once and elsewhere.
        image.orientation = image.req_orientation = ORIENTATION_TOPLEFT;
        const bool whole = readBands(image);
        TIFFRGBAImageEnd(&image);
        return whole;
    }

    bool readBands(TIFFRGBAImage& image)
    {
        const bool has_alpha = image.alpha != 0;
        const ToSrgb to_srgb(
            {ColourModel::Rgb, has_alpha ? AlphaKind::Premultiplied : AlphaKind::None}, profile_);
        noteProfile(to_srgb);
        const auto width = static_cast<std::uint32_t>(picture_.size_px.width);
        for (int y = 0; y < picture_.size_px.height; y += block_.height) {
            const int rows = std::min(block_.height, picture_.size_px.height - y);
            cv::Mat band(rows, picture_.size_px.width, CV_8UC4);
            image.row_offset = y;
            if (TIFFRGBAImageGet(&image, band.ptr<std::uint32_t>(), width,
                                 static_cast<std::uint32_t>(rows)) == 0)
                return false;
            if (!has_alpha)
                cv::cvtColor(band, band, cv::COLOR_RGBA2RGB);
            to_srgb.convert(band).copyTo(picture_.pixels.rowRange(y, y + rows));
            noteRows(y + rows);
        }
        return true;
    }

    void noteProfile(const ToSrgb& to_srgb)
    {
        // Lab and inks that libtiff has turned to RGB have no more use for their profile.
        const bool applies = samples_.photometric != PHOTOMETRIC_CIELAB;
        picture_.profile_left_out = applies && !profile_.empty() && !to_srgb.followsProfile();
    }

    TIFF* tiff_;
    const Samples& samples_;
    DecodedPicture& picture_;
    std::span<const unsigned char> profile_;
    cv::Size block_;  // a strip or a tile
    bool sound_ = false;
};

bool hasMorePictures(TIFF* tiff)
{
    std::uint32_t kind = 0;
    return TIFFLastDirectory(tiff) == 0 && TIFFReadDirectory(tiff) != 0 &&
           (TIFFGetField(tiff, TIFFTAG_SUBFILETYPE, &kind) == 0 || kind == 0);
}

}  // namespace

DecodedPicture decodeTiff(std::span<const unsigned char> bytes, double max_pixels)
{
    DecodedPicture picture;
    constexpr double bytes_a_pixel = 8, headers = 16e6;
    const TiffFile file(bytes, static_cast<tmsize_t>(bytes_a_pixel * max_pixels + headers));
    const auto fault = [&] { return file.isShort() ? PictureFault::Torn : PictureFault::Damaged; };
    std::uint32_t width = 0, height = 0;
    if (file.tiff() == nullptr || TIFFGetField(file.tiff(), TIFFTAG_IMAGEWIDTH, &width) == 0 ||
        TIFFGetField(file.tiff(), TIFFTAG_IMAGELENGTH, &height) == 0 || width == 0 || height == 0) {
        picture.fault = fault();
        return picture;
    }
    if (static_cast<double>(width) * height > max_pixels) {
        constexpr std::uint32_t most_int = 0x7FFFFFFF;
        picture.size_px = {static_cast<int>(std::min(width, most_int)),
                           static_cast<int>(std::min(height, most_int))};
        picture.fault = PictureFault::TooLarge;
        return picture;
    }
    picture.size_px = {static_cast<int>(width), static_cast<int>(height)};
    const Samples samples = samplesOf(file.tiff());
    if (isCameraRaw(file.tiff(), samples)) {
        picture.fault = PictureFault::CameraRaw;
        return picture;
    }
    const bool whole = TiffPixels(file.tiff(), samples, picture).read();
    if (!whole && picture.fault == PictureFault::None)
        picture.fault = fault();
    picture.facts = file.facts();
    TIFFSetDirectory(file.tiff(), 0);
    picture.more_pictures = hasMorePictures(file.tiff());
    return picture;
}

}  // namespace vision
