#include "tests/support/synthetic/props.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

#include "tests/support/synthetic/lighting.h"
#include "tests/support/synthetic/noise.h"
#include "tests/support/synthetic/scene_light.h"

namespace synthetic {
namespace {

// From a prop's own axes (x along it, origin at its middle or tip) to the photo and back.
struct Lie {
    double x, y, cos, sin;

    cv::Point2f from(const cv::Point2d& photo) const
    {
        const cv::Point2d d = photo - cv::Point2d(x, y);
        return cv::Point2f(static_cast<float>(d.x * cos + d.y * sin),
                           static_cast<float>(d.y * cos - d.x * sin));
    }
};

Lie lieOf(cv::Size photo, double x_px, double y_px, double turn_deg)
{
    const double turn = turn_deg * CV_PI / 180;
    return {photo.width / 2.0 + x_px, photo.height / 2.0 + y_px, std::cos(turn), std::sin(turn)};
}

struct Prop {
    Surface surface;
    cv::Mat there;  // CV_32FC1, 0 to 1
};

// Boxwood with ticks on one edge: every fifth longer, every tenth the longest.
Prop rulerProp(const SceneOptions& options, const RulerOptions& ruler, cv::RNG& random)
{
    const cv::Size size = options.size_px;
    const Lie lie = lieOf(size, ruler.x_px, ruler.y_px, ruler.turn_deg);
    const cv::Mat streaks = smoothNoise(size, 3, random, 6), tone = smoothNoise(size, 60, random);
    const cv::Vec3f wood = linearColour({104, 168, 200}), black = linearColour({34, 40, 46});
    const auto half_length = static_cast<float>(ruler.length_px / 2),
               half_width = static_cast<float>(ruler.width_px / 2),
               tick = static_cast<float>(ruler.tick_px);
    Prop prop{blankSurface(size), cv::Mat::zeros(size, CV_32FC1)};
    prop.surface.gloss = 0.5F;
    prop.there.forEach<float>([&](float& there, const int* at) {
        const cv::Point2f p = lie.from(cv::Point2d(at[1], at[0]));
        const float inside = std::min(half_length - std::abs(p.x), half_width - std::abs(p.y));
        there = std::clamp(inside + 0.5F, 0.0F, 1.0F);
        if (there <= 0)
            return;
        const float along = (p.x + half_length) / tick;
        const int which = static_cast<int>(std::lround(along));
        const float length = half_width * (which % 10 == 0 ? 0.85F : which % 5 == 0 ? 0.62F : 0.4F);
        const float off = std::abs(along - static_cast<float>(which)) * tick;
        const float worn = 0.75F + 0.25F * smoothStep(-1.5F, 0.5F, tone.at<float>(at[0], at[1]));
        const float mark = p.y + half_width < length ? worn * smoothStep(1.6F, 0.6F, off) : 0.0F;
        prop.surface.albedo.at<cv::Vec3f>(at[0], at[1]) =
            (wood * (1 - mark) + black * mark) *
            (1 + 0.05F * streaks.at<float>(at[0], at[1]) + 0.05F * tone.at<float>(at[0], at[1]));
        prop.surface.height.at<float>(at[0], at[1]) =
            6 - 2.5F * smoothStep(6, 0, inside) + 0.08F * streaks.at<float>(at[0], at[1]);
    });
    return prop;
}

// The nail's place: 0 outside, 1 inside; lengths in half widths from the tip.
float nailAt(float along, float across)
{
    const float dx = (along + 0.86F) / 0.62F, dy = across / 0.56F;
    return smoothStep(1.06F, 0.94F, std::sqrt(dx * dx * dx * dx + dy * dy * dy * dy));
}

Prop thumbProp(const SceneOptions& options, const ThumbOptions& thumb, cv::RNG& random)
{
    const cv::Size size = options.size_px;
    const Lie lie = lieOf(size, thumb.x_px, thumb.y_px, thumb.turn_deg);
    const auto half = static_cast<float>(thumb.width_px / 2);
    const cv::Mat pores = smoothNoise(size, 2.2, random), lines = smoothNoise(size, 5, random),
                  tone = smoothNoise(size, thumb.width_px * 0.4, random);
    const cv::Vec3f skin = linearColour({118, 144, 190}), nail = linearColour({150, 172, 216});
    Prop prop{blankSurface(size), cv::Mat::zeros(size, CV_32FC1)};
    prop.there.forEach<float>([&](float& there, const int* at) {
        const int y = at[0], x = at[1];
        const cv::Point2f p = lie.from(cv::Point2d(x, y)) / half;  // the tip at 0, the hand below
        // Wider at the joint and towards the hand.
        const float down = std::max(0.0F, -p.x);
        const float girth = 1 + 0.10F * std::exp(-(down - 2.6F) * (down - 2.6F)) + 0.06F * down;
        const float cap = p.x > -1 ? std::sqrt(std::max(0.0F, 1 - (p.x + 1) * (p.x + 1))) : 1.0F;
        const float across = p.y / (girth * std::max(0.02F, cap));
        const float inside = p.x > 0 ? -1 : (1 - std::abs(across)) * cap * half;
        there = std::clamp(inside + 0.5F, 0.0F, 1.0F);
        if (there <= 0)
            return;
        const float round = std::sqrt(std::max(0.0F, 1 - across * across)) * std::sqrt(cap);
        const float knuckle = std::exp(-(down - 2.9F) * (down - 2.9F) / 0.10F);
        const float crease =
            knuckle *
            std::pow(0.5F + 0.5F * std::sin(down * 42 + 1.6F * lines.at<float>(y, x)), 3.0F);
        const float on_nail = nailAt(p.x, p.y);
        prop.surface.height.at<float>(y, x) = half * 0.85F * round - 1.6F * crease +
                                              0.35F * (1 - on_nail) * pores.at<float>(y, x) -
                                              2.0F * on_nail * (1 - on_nail) * 4;
        cv::Vec3f colour = skin * (1 + 0.03F * pores.at<float>(y, x) - 0.10F * crease);
        colour[2] *= 1 + 0.02F * tone.at<float>(y, x);
        const float moon = on_nail * smoothStep(-1.22F, -1.36F, p.x) * 0.35F;
        colour = colour * (1 - on_nail) +
                 (nail * (1 - moon) + cv::Vec3f(0.7F, 0.74F, 0.8F) * moon) * on_nail;
        colour *= 1 - 0.35F * 4 * on_nail * (1 - on_nail);
        prop.surface.albedo.at<cv::Vec3f>(y, x) = colour;
        prop.surface.gloss.at<float>(y, x) = 0.3F + 0.7F * on_nail;
    });
    return prop;
}

void lay(cv::Mat& radiance, const Prop& prop, const SceneOptions& options, double thickness_px)
{
    LightOptions light = lightOn(options, 0);
    const double turn = light.from_deg * CV_PI / 180;
    const double length =
        thickness_px / std::tan(std::clamp(light.elevation_deg, 12.0, 80.0) * CV_PI / 180);
    cv::Mat shadow, contact;
    cv::warpAffine(prop.there, shadow,
                   cv::Matx23d(1, 0, -length * std::cos(turn), 0, 1, -length * std::sin(turn)),
                   radiance.size(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
    cv::GaussianBlur(shadow, shadow, {}, 2 + length * 0.22);
    cv::GaussianBlur(prop.there, contact, {}, 0.4 * thickness_px + 3);
    const cv::Mat shone = lit(prop.surface, light);
    radiance.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int* at) {
        const float there = prop.there.at<float>(at[0], at[1]);
        const cv::Vec3f shaded = value * ((1 - 0.6F * shadow.at<float>(at[0], at[1])) *
                                          (1 - 0.4F * contact.at<float>(at[0], at[1])));
        value = shaded * (1 - there) + shone.at<cv::Vec3f>(at[0], at[1]) * there;
    });
}

}  // namespace

cv::Mat layProps(cv::Mat& radiance, const SceneOptions& options)
{
    cv::Mat in_sight(radiance.size(), CV_32FC1, 1.0F);
    cv::RNG random(options.seed + 9);
    if (options.details.ruler) {
        const Prop prop = rulerProp(options, *options.details.ruler, random);
        lay(radiance, prop, options, 9);
        in_sight = in_sight.mul(1.0 - prop.there);
    }
    if (options.details.thumb) {
        const Prop prop = thumbProp(options, *options.details.thumb, random);
        lay(radiance, prop, options, options.details.thumb->width_px * 0.3);
        in_sight = in_sight.mul(1.0 - prop.there);
    }
    return in_sight;
}

}  // namespace synthetic
