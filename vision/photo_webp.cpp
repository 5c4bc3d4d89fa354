#include "vision/photo_webp.h"

#include <algorithm>
#include <memory>

#include <webp/decode.h>
#include <webp/demux.h>

#include "vision/photo_colour.h"

namespace vision {
namespace {

using Bytes = std::span<const unsigned char>;

// The container says in its bytes 4 to 7, least first, how long the rest of it is.
bool isShort(Bytes bytes)
{
    if (bytes.size() < 12)
        return true;
    std::size_t rest = 0;
    for (std::size_t i = 0; i < 4; ++i)
        rest |= static_cast<std::size_t>(bytes[4 + i]) << (8 * i);
    return rest + 8 > bytes.size();
}

// A chunk of the container, such as "EXIF", as far as the file has got.
std::vector<unsigned char> chunk(Bytes bytes, const char* name)
{
    const WebPData data = {bytes.data(), bytes.size()};
    WebPDemuxState state{};
    const std::unique_ptr<WebPDemuxer, decltype(&WebPDemuxDelete)> demuxer(
        WebPDemuxPartial(&data, &state), &WebPDemuxDelete);
    WebPChunkIterator found{};
    if (demuxer == nullptr || WebPDemuxGetChunk(demuxer.get(), name, 1, &found) == 0)
        return {};
    std::vector<unsigned char> content(found.chunk.bytes, found.chunk.bytes + found.chunk.size);
    WebPDemuxReleaseChunkIterator(&found);
    return content;
}

struct DecodedRows {
    VP8StatusCode status = VP8_STATUS_OUT_OF_MEMORY;
    int rows = 0;  // from the top, that are decoded
};

DecodedRows decodeInto(cv::Mat& raw, Bytes bytes)
{
    WebPDecoderConfig config;
    if (WebPInitDecoderConfig(&config) == 0)
        return {};
    config.options.use_threads = 1;
    config.output.colorspace = raw.channels() == 4 ? MODE_BGRA : MODE_BGR;
    config.output.is_external_memory = 1;
    config.output.u.RGBA = {raw.ptr(), static_cast<int>(raw.step[0]), raw.total() * raw.elemSize()};
    const std::unique_ptr<WebPIDecoder, decltype(&WebPIDelete)> decoder(
        WebPIDecode(nullptr, 0, &config), &WebPIDelete);
    if (decoder == nullptr)
        return {};
    DecodedRows decoded;
    decoded.status = WebPIUpdate(decoder.get(), bytes.data(), bytes.size());
    int rows = 0;
    if (WebPIDecGetRGB(decoder.get(), &rows, nullptr, nullptr, nullptr) != nullptr)
        decoded.rows = std::clamp(rows, 0, raw.rows);
    return decoded;
}

}  // namespace

DecodedPicture decodeWebP(Bytes bytes, double max_pixels)
{
    DecodedPicture picture;
    const auto fault = [&] { return isShort(bytes) ? PictureFault::Torn : PictureFault::Damaged; };
    WebPBitstreamFeatures features{};
    if (WebPGetFeatures(bytes.data(), bytes.size(), &features) != VP8_STATUS_OK) {
        picture.fault = fault();
        return picture;
    }
    picture.size_px = {features.width, features.height};
    if (isOverLimit(picture.size_px, max_pixels)) {
        picture.fault = PictureFault::TooLarge;
        return picture;
    }
    if (features.has_animation != 0) {
        picture.fault = PictureFault::Moving;
        return picture;
    }
    const bool has_alpha = features.has_alpha != 0;
    cv::Mat raw(picture.size_px, has_alpha ? CV_8UC4 : CV_8UC3, cv::Scalar::all(128));
    const DecodedRows decoded = decodeInto(raw, bytes);
    picture.whole = static_cast<double>(decoded.rows) / raw.rows;
    if (decoded.status != VP8_STATUS_OK)
        picture.fault = fault();
    picture.exif = chunk(bytes, "EXIF");
    const auto profile = chunk(bytes, "ICCP");
    const ToSrgb to_srgb({ColourModel::Bgr, has_alpha ? AlphaKind::Straight : AlphaKind::None},
                         profile);
    picture.profile_left_out = !profile.empty() && !to_srgb.followsProfile();
    picture.pixels = to_srgb.convert(raw);
    return picture;
}

}  // namespace vision
