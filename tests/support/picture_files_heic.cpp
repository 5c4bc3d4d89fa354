#include <memory>
#include <stdexcept>

#include <libheif/heif.h>

#include "tests/support/picture_files.h"

// The encoder's library keeps some memory at its end, which is no leak of ours; the sanitizer asks
// for this by name.
extern "C" const char* __lsan_default_suppressions()
{
    return "leak:libx265";
}

namespace picture_files {
namespace {

struct Free {
    void operator()(heif_context* context) const { heif_context_free(context); }
    void operator()(heif_image_handle* handle) const { heif_image_handle_release(handle); }
    void operator()(heif_image* image) const { heif_image_release(image); }
    void operator()(heif_encoder* encoder) const { heif_encoder_release(encoder); }
    void operator()(heif_encoding_options* options) const { heif_encoding_options_free(options); }
};

void require(const heif_error& error)
{
    if (error.code != heif_error_Ok)
        throw std::runtime_error(std::string("libheif cannot write a test picture: ") +
                                 error.message);
}

std::unique_ptr<heif_image, Free> imageOf(const cv::Mat& bgr, const Bytes& profile)
{
    heif_image* made = nullptr;
    require(heif_image_create(bgr.cols, bgr.rows, heif_colorspace_RGB, heif_chroma_interleaved_RGB,
                              &made));
    std::unique_ptr<heif_image, Free> image(made);
    require(heif_image_add_plane(made, heif_channel_interleaved, bgr.cols, bgr.rows, 8));
    int stride = 0;
    std::uint8_t* plane = heif_image_get_plane(made, heif_channel_interleaved, &stride);
    for (int y = 0; y < bgr.rows; ++y)
        for (int x = 0; x < bgr.cols; ++x)
            for (int c = 0; c < 3; ++c)
                plane[y * stride + 3 * x + c] = bgr.at<cv::Vec3b>(y, x)[2 - c];
    if (!profile.empty())
        require(heif_image_set_raw_color_profile(made, "prof", profile.data(), profile.size()));
    return image;
}

}  // namespace

bool canWriteHeic()
{
    return heif_have_encoder_for_format(heif_compression_HEVC) != 0;
}

Bytes heic(const cv::Mat& picture, int turn, const Bytes& exif, const Bytes& profile)
{
    const std::unique_ptr<heif_context, Free> context(heif_context_alloc());
    heif_encoder* chosen = nullptr;
    require(heif_context_get_encoder_for_format(context.get(), heif_compression_HEVC, &chosen));
    const std::unique_ptr<heif_encoder, Free> encoder(chosen);
    require(heif_encoder_set_lossy_quality(chosen, 95));
    const std::unique_ptr<heif_encoding_options, Free> options(heif_encoding_options_alloc());
    options->image_orientation = static_cast<heif_orientation>(turn);
    const auto image = imageOf(picture, profile);
    heif_image_handle* added = nullptr;
    require(heif_context_encode_image(context.get(), image.get(), chosen, options.get(), &added));
    const std::unique_ptr<heif_image_handle, Free> handle(added);
    if (!exif.empty())
        require(heif_context_add_exif_metadata(context.get(), added, exif.data(),
                                               static_cast<int>(exif.size())));
    Bytes bytes;
    heif_writer writer{1, [](heif_context*, const void* data, size_t size, void* to) {
                           const auto* begin = static_cast<const unsigned char*>(data);
                           static_cast<Bytes*>(to)->assign(begin, begin + size);
                           return heif_error{heif_error_Ok, heif_suberror_Unspecified, ""};
                       }};
    require(heif_context_write(context.get(), &writer, &bytes));
    return bytes;
}

}  // namespace picture_files
