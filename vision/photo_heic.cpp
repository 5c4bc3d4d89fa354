#include "vision/photo_heic.h"

#include <memory>

#include <libheif/heif.h>

#include "vision/photo_colour.h"
#include "vision/photo_heic_size.h"

namespace vision {
namespace {

using Bytes = std::span<const unsigned char>;

struct Free {
    void operator()(heif_context* context) const { heif_context_free(context); }
    void operator()(heif_image_handle* handle) const { heif_image_handle_release(handle); }
    void operator()(heif_image* image) const { heif_image_release(image); }
    void operator()(heif_decoding_options* options) const { heif_decoding_options_free(options); }
};

std::uint64_t bigEndian(Bytes bytes, std::uint64_t at, int count)
{
    std::uint64_t value = 0;
    for (int i = 0; i < count; ++i)
        value = value << 8 | bytes[at + static_cast<std::uint64_t>(i)];
    return value;
}

// The file is a row of boxes, each with its length in front (ISO/IEC 14496-12): whether the last
// one reaches beyond the file.
bool isShort(Bytes bytes)
{
    std::uint64_t at = 0;
    while (at + 8 <= bytes.size()) {
        std::uint64_t length = bigEndian(bytes, at, 4);
        if (length == 0)
            return false;  // to the end of the file, wherever that is
        if (length == 1) {
            if (at + 16 > bytes.size())
                return true;
            length = bigEndian(bytes, at + 8, 8);
        }
        if (length < 8)
            return false;
        if (length > bytes.size() - at)
            return true;
        at += length;
    }
    return at != bytes.size();
}

PictureFault faultOf(const heif_error& error, Bytes bytes)
{
    if (isShort(bytes))
        return PictureFault::Torn;
    return error.code == heif_error_Unsupported_feature ||
                   error.code == heif_error_Unsupported_filetype
               ? PictureFault::Unsupported
               : PictureFault::Damaged;
}

// The block starts with the distance of the TIFF header from its own fourth byte.
std::vector<unsigned char> exifOf(const heif_image_handle* handle)
{
    heif_item_id id = 0;
    if (heif_image_handle_get_list_of_metadata_block_IDs(handle, "Exif", &id, 1) != 1)
        return {};
    std::vector<unsigned char> block(heif_image_handle_get_metadata_size(handle, id));
    if (block.size() <= 4 ||
        heif_image_handle_get_metadata(handle, id, block.data()).code != heif_error_Ok)
        return {};
    const std::uint64_t header = 4 + bigEndian(block, 0, 4);
    if (header >= block.size())
        return {};
    block.erase(block.begin(), block.begin() + static_cast<std::ptrdiff_t>(header));
    return block;
}

std::vector<unsigned char> profileOf(const heif_image_handle* handle)
{
    std::vector<unsigned char> profile(heif_image_handle_get_raw_color_profile_size(handle));
    if (profile.empty() ||
        heif_image_handle_get_raw_color_profile(handle, profile.data()).code != heif_error_Ok)
        return {};
    return profile;
}

AlphaKind alphaOf(const heif_image_handle* handle)
{
    if (heif_image_handle_has_alpha_channel(handle) == 0)
        return AlphaKind::None;
    return heif_image_handle_is_premultiplied_alpha(handle) != 0 ? AlphaKind::Premultiplied
                                                                 : AlphaKind::Straight;
}

heif_error decodePixels(const heif_image_handle* handle, DecodedPicture& picture)
{
    const AlphaKind alpha = alphaOf(handle);
    const bool has_alpha = alpha != AlphaKind::None;
    const std::unique_ptr<heif_decoding_options, Free> options(heif_decoding_options_alloc());
    options->convert_hdr_to_8bit = 1;
    options->strict_decoding = 1;  // what is damaged is refused, not guessed
    heif_image* decoded = nullptr;
    const heif_error error = heif_decode_image(
        handle, &decoded, heif_colorspace_RGB,
        has_alpha ? heif_chroma_interleaved_RGBA : heif_chroma_interleaved_RGB, options.get());
    const std::unique_ptr<heif_image, Free> image(decoded);
    if (error.code != heif_error_Ok)
        return error;
    heif_error noticed;
    if (heif_image_get_decoding_warnings(image.get(), 0, &noticed, 1) > 0)
        return noticed;
    int stride = 0;
    const std::uint8_t* plane =
        heif_image_get_plane_readonly(image.get(), heif_channel_interleaved, &stride);
    const cv::Size size(heif_image_get_width(image.get(), heif_channel_interleaved),
                        heif_image_get_height(image.get(), heif_channel_interleaved));
    if (plane == nullptr || size.empty())
        return {heif_error_Decoder_plugin_error, heif_suberror_Unspecified, "no pixels"};
    const cv::Mat raw(size, has_alpha ? CV_8UC4 : CV_8UC3, const_cast<std::uint8_t*>(plane),
                      static_cast<std::size_t>(stride));
    const auto profile = profileOf(handle);
    const ToSrgb to_srgb({ColourModel::Rgb, alpha}, profile);
    picture.profile_left_out = !profile.empty() && !to_srgb.followsProfile();
    picture.pixels = to_srgb.convert(raw);
    picture.size_px = size;
    picture.whole = 1;
    return error;
}

}  // namespace

bool canDecodeHeic()
{
    return true;
}

DecodedPicture decodeHeic(Bytes bytes, double max_pixels)
{
    DecodedPicture picture;
    picture.whole.reset();
    const std::unique_ptr<heif_context, Free> context(heif_context_alloc());
    heif_context_set_max_decoding_threads(context.get(), 0);  // one after another: always the same
    heif_error error = heif_context_read_from_memory_without_copy(context.get(), bytes.data(),
                                                                  bytes.size(), nullptr);
    heif_image_handle* opened = nullptr;
    if (error.code == heif_error_Ok)
        error = heif_context_get_primary_image_handle(context.get(), &opened);
    const std::unique_ptr<heif_image_handle, Free> handle(opened);
    if (error.code != heif_error_Ok) {
        picture.fault = faultOf(error, bytes);
        return picture;
    }
    picture.size_px = {heif_image_handle_get_width(handle.get()),
                       heif_image_handle_get_height(handle.get())};
    if (isOverLimit(picture.size_px, max_pixels)) {
        picture.fault = PictureFault::TooLarge;
        return picture;
    }
    if (mostDerivedPixels(bytes) > max_pixels) {  // it is not the size that the header told
        picture.fault = PictureFault::Damaged;
        return picture;
    }
    error = decodePixels(handle.get(), picture);
    if (error.code != heif_error_Ok)
        picture.fault = faultOf(error, bytes);
    picture.more_pictures = heif_context_get_number_of_top_level_images(context.get()) > 1;
    picture.facts = readExif(exifOf(handle.get()));
    picture.facts->orientation = 1;  // the file turns its picture itself, and libheif has done so
    return picture;
}

}  // namespace vision
