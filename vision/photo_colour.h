#pragma once

#include <memory>
#include <span>

#include <opencv2/core.hpp>

namespace vision {

// What the channels of a decoded picture stand for. Alpha, where there is one, is the last channel.
enum class ColourModel { Grey, Rgb, Bgr, Cmyk, CmykInverted };
enum class AlphaKind { None, Straight, Premultiplied };

struct SampleLayout {
    ColourModel model = ColourModel::Bgr;
    AlphaKind alpha = AlphaKind::None;  // none with inks
};

// Brings samples as a file holds them to what the project works with: BGR of 8 bits in sRGB (IEC
// 61966-2-1), what is transparent laid on white. A colour profile is followed through Little CMS
// (relative colorimetric, with black point compensation). Inks without a usable profile are turned
// by plain multiplication, which is rough.
class ToSrgb {
public:
    //   profile  an ICC profile as the file carries it; empty when it has none. One that is damaged
    //            or is not for this model is left out.
    ToSrgb(const SampleLayout& layout, std::span<const unsigned char> profile);
    ~ToSrgb();
    ToSrgb(const ToSrgb&) = delete;
    ToSrgb& operator=(const ToSrgb&) = delete;

    //   raw      8 or 16 bits (CV_8U, CV_16U), channels as the layout says; not changed
    //   returns  CV_8UC3, the same size; `raw` itself where nothing is to be done
    // Throws std::invalid_argument when `raw` does not have the layout's channels.
    cv::Mat convert(const cv::Mat& raw) const;

    bool followsProfile() const { return profile_ != nullptr; }

private:
    cv::Mat converted(const cv::Mat& straight) const;
    cv::Mat throughProfile(const cv::Mat& straight) const;

    SampleLayout layout_;
    std::shared_ptr<void> profile_;  // a handle of Little CMS; null without one to be followed
};

}  // namespace vision
