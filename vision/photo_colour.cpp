#include "vision/photo_colour.h"

#include <algorithm>
#include <functional>
#include <stdexcept>
#include <vector>

#include <lcms2.h>

namespace vision {
namespace {

int colourChannels(ColourModel model)
{
    switch (model) {
        case ColourModel::Grey:
            return 1;
        case ColourModel::Rgb:
        case ColourModel::Bgr:
            return 3;
        case ColourModel::Cmyk:
        case ColourModel::CmykInverted:
            break;
    }
    return 4;
}

bool isFor(cmsColorSpaceSignature space, ColourModel model)
{
    switch (model) {
        case ColourModel::Grey:  // a grey picture often carries the profile of its colour scanner
            return space == cmsSigGrayData || space == cmsSigRgbData;
        case ColourModel::Rgb:
        case ColourModel::Bgr:
            return space == cmsSigRgbData;
        case ColourModel::Cmyk:
        case ColourModel::CmykInverted:
            break;
    }
    return space == cmsSigCmykData;
}

// How Little CMS is to read one pixel; grey goes through in its profile's own space.
cmsUInt32Number formatOf(const SampleLayout& layout, cmsColorSpaceSignature space, int bytes)
{
    const cmsUInt32Number common =
        BYTES_SH(static_cast<cmsUInt32Number>(bytes)) |
        EXTRA_SH(layout.alpha == AlphaKind::None || layout.model == ColourModel::Grey ? 0U : 1U);
    switch (layout.model) {
        case ColourModel::Grey:
            return common | (space == cmsSigGrayData ? COLORSPACE_SH(PT_GRAY) | CHANNELS_SH(1)
                                                     : COLORSPACE_SH(PT_RGB) | CHANNELS_SH(3));
        case ColourModel::Rgb:
            return common | COLORSPACE_SH(PT_RGB) | CHANNELS_SH(3);
        case ColourModel::Bgr:  // with alpha last, as in BGRA
            return common | COLORSPACE_SH(PT_RGB) | CHANNELS_SH(3) | DOSWAP_SH(1) |
                   (layout.alpha == AlphaKind::None ? 0U : SWAPFIRST_SH(1));
        case ColourModel::Cmyk:
            return common | COLORSPACE_SH(PT_CMYK) | CHANNELS_SH(4);
        case ColourModel::CmykInverted:
            break;
    }
    return common | COLORSPACE_SH(PT_CMYK) | CHANNELS_SH(4) | FLAVOR_SH(1);
}

std::shared_ptr<void> transformOf(cmsHPROFILE from, cmsUInt32Number format, bool exact)
{
    const std::unique_ptr<void, decltype(&cmsCloseProfile)> srgb(cmsCreate_sRGBProfile(),
                                                                 &cmsCloseProfile);
    // A table precomputed for 16 bits is too coarse in the darks of a linear profile.
    const cmsUInt32Number flags =
        cmsFLAGS_NOCACHE | cmsFLAGS_BLACKPOINTCOMPENSATION | (exact ? cmsFLAGS_NOOPTIMIZE : 0U);
    const cmsHTRANSFORM transform = cmsCreateTransform(from, format, srgb.get(), TYPE_BGR_8,
                                                       INTENT_RELATIVE_COLORIMETRIC, flags);
    return {transform, [](void* handle) {
                if (handle != nullptr)
                    cmsDeleteTransform(handle);
            }};
}

// Every level a grey sample can have, as BGR, so that a row is looked up and not calculated.
std::vector<cv::Vec3b> greyLevels(cmsHPROFILE profile, const SampleLayout& layout, int depth)
{
    const int count = depth == CV_16U ? 65536 : 256;
    const auto space = cmsGetColorSpace(profile);
    const auto transform =
        transformOf(profile, formatOf(layout, space, depth == CV_16U ? 2 : 1), true);
    cv::Mat levels(1, count, CV_MAKETYPE(depth, 1));
    for (int i = 0; i < count; ++i) {
        if (depth == CV_16U)
            levels.at<ushort>(i) = static_cast<ushort>(i);
        else
            levels.at<uchar>(i) = static_cast<uchar>(i);
    }
    if (space == cmsSigRgbData)
        cv::merge(std::vector<cv::Mat>(3, levels), levels);
    cv::Mat bgr(1, count, CV_8UC3, cv::Scalar::all(0));
    if (transform != nullptr)
        cmsDoTransform(transform.get(), levels.ptr(), bgr.ptr(),
                       static_cast<cmsUInt32Number>(count));
    return {bgr.begin<cv::Vec3b>(), bgr.end<cv::Vec3b>()};
}

// Calls work(row number, row of the result) for every row, on all cores.
cv::Mat byRows(const cv::Mat& raw, int type, const std::function<void(int y, uchar* to)>& work)
{
    cv::Mat result(raw.size(), type);
    cv::parallel_for_({0, raw.rows}, [&](const cv::Range& rows) {
        for (int y = rows.start; y < rows.end; ++y)
            work(y, result.ptr(y));
    });
    return result;
}

cv::Mat to8Bits(const cv::Mat& samples)
{
    if (samples.depth() == CV_8U)
        return samples;
    cv::Mat levels;
    samples.convertTo(levels, CV_8U, 255.0 / 65535);
    return levels;
}

// Without a profile: order and inks alone.
void plainPixel(const uchar* from, uchar* to, ColourModel model)
{
    switch (model) {
        case ColourModel::Grey:
            to[0] = to[1] = to[2] = from[0];
            return;
        case ColourModel::Rgb:
        case ColourModel::Bgr:
            for (int c = 0; c < 3; ++c)
                to[c] = from[model == ColourModel::Bgr ? c : 2 - c];
            return;
        case ColourModel::Cmyk:
        case ColourModel::CmykInverted:
            break;
    }
    const auto light = [&](int i) {
        return model == ColourModel::CmykInverted ? from[i] : 255 - from[i];
    };
    for (int c = 0; c < 3; ++c)
        to[c] = static_cast<uchar>((light(2 - c) * light(3) + 127) / 255);
}

cv::Mat plainBgr(const cv::Mat& samples, ColourModel model)
{
    const int channels = samples.channels();
    return byRows(samples, CV_8UC3, [&](int y, uchar* to) {
        const uchar* from = samples.ptr(y);
        for (int x = 0; x < samples.cols; ++x, from += channels, to += 3)
            plainPixel(from, to, model);
    });
}

cv::Mat lookedUp(const cv::Mat& samples, const std::vector<cv::Vec3b>& levels)
{
    const int channels = samples.channels();
    const bool deep = samples.depth() == CV_16U;
    return byRows(samples, CV_8UC3, [&](int y, uchar* to) {
        for (int x = 0; x < samples.cols; ++x, to += 3) {
            const int level =
                deep ? samples.ptr<ushort>(y)[x * channels] : samples.ptr(y)[x * channels];
            std::copy_n(levels[static_cast<std::size_t>(level)].val, 3, to);
        }
    });
}

// Colours as they are before the alpha is multiplied in, which is what a profile speaks of.
cv::Mat straightened(const cv::Mat& samples)
{
    const int channels = samples.channels();
    return byRows(samples, samples.type(), [&](int y, uchar* to) {
        const uchar* from = samples.ptr(y);
        for (int x = 0; x < samples.cols; ++x, from += channels, to += channels) {
            const int alpha = from[channels - 1];
            for (int c = 0; c + 1 < channels; ++c)
                to[c] = static_cast<uchar>(
                    alpha == 0 ? 0 : std::min(255, (from[c] * 255 + alpha / 2) / alpha));
            to[channels - 1] = static_cast<uchar>(alpha);
        }
    });
}

cv::Mat laidOnWhite(const cv::Mat& bgr, const cv::Mat& samples)
{
    cv::Mat alphas;
    cv::extractChannel(samples, alphas, samples.channels() - 1);
    alphas = to8Bits(alphas);
    return byRows(bgr, CV_8UC3, [&](int y, uchar* to) {
        const uchar* from = bgr.ptr(y);
        for (int x = 0; x < bgr.cols; ++x, from += 3, to += 3) {
            const int alpha = alphas.at<uchar>(y, x);
            for (int c = 0; c < 3; ++c)
                to[c] = static_cast<uchar>((from[c] * alpha + 255 * (255 - alpha) + 127) / 255);
        }
    });
}

}  // namespace

ToSrgb::ToSrgb(const SampleLayout& layout, std::span<const unsigned char> profile) : layout_(layout)
{
    if (profile.empty())
        return;
    const cmsHPROFILE handle =
        cmsOpenProfileFromMem(profile.data(), static_cast<cmsUInt32Number>(profile.size()));
    if (handle == nullptr)
        return;
    profile_ = {handle, [](void* opened) { cmsCloseProfile(opened); }};
    const auto space = cmsGetColorSpace(handle);
    if (!isFor(space, layout.model) ||
        transformOf(handle, formatOf(layout, space, 1), false) == nullptr)
        profile_.reset();
}

ToSrgb::~ToSrgb() = default;

cv::Mat ToSrgb::throughProfile(const cv::Mat& straight) const
{
    const bool deep = straight.depth() == CV_16U;
    if (layout_.model == ColourModel::Grey)
        return lookedUp(straight, greyLevels(profile_.get(), layout_, straight.depth()));
    const bool inks = colourChannels(layout_.model) == 4;
    const auto transform = transformOf(
        profile_.get(), formatOf(layout_, cmsGetColorSpace(profile_.get()), deep ? 2 : 1),
        deep && !inks);
    if (transform == nullptr)
        throw std::runtime_error("a colour profile that was good before makes no transform");
    return byRows(straight, CV_8UC3, [&](int y, uchar* to) {
        cmsDoTransform(transform.get(), straight.ptr(y), to,
                       static_cast<cmsUInt32Number>(straight.cols));
    });
}

cv::Mat ToSrgb::converted(const cv::Mat& straight) const
{
    if (profile_ != nullptr)
        return throughProfile(straight);
    const cv::Mat levels = to8Bits(straight);
    const bool done = layout_.model == ColourModel::Bgr && levels.channels() == 3;
    return done ? levels : plainBgr(levels, layout_.model);
}

cv::Mat ToSrgb::convert(const cv::Mat& raw) const
{
    const bool has_alpha = layout_.alpha != AlphaKind::None;
    if (raw.channels() != colourChannels(layout_.model) + (has_alpha ? 1 : 0) ||
        (raw.depth() != CV_8U && raw.depth() != CV_16U))
        throw std::invalid_argument("ToSrgb: the samples are not those of the layout");
    if (!has_alpha)
        return converted(raw);
    const cv::Mat straight =
        layout_.alpha == AlphaKind::Premultiplied ? straightened(to8Bits(raw)) : raw;
    return laidOnWhite(converted(straight), raw);
}

}  // namespace vision
