#include "tests/support/synthetic/scene_light.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

#include "tests/support/synthetic/noise.h"
#include "tests/support/synthetic/table_top.h"

namespace synthetic {
namespace {

// The shadow of something straight, a bar or the edge of a hand, sharper the nearer it was held.
void castShadow(cv::Mat& field, const ShadowOptions& shadow)
{
    const double turn = shadow.turn_deg * CV_PI / 180;
    const cv::Point2d middle(field.cols / 2.0 + shadow.x_px, field.rows / 2.0 + shadow.y_px);
    const auto half = static_cast<float>(shadow.width_px / 2);
    const auto soft = static_cast<float>(std::max(0.5, shadow.softness_px));
    field.forEach<float>([&](float& value, const int* at) {
        const auto beside = static_cast<float>(
            std::abs((at[1] - middle.x) * -std::sin(turn) + (at[0] - middle.y) * std::cos(turn)));
        value *=
            1 - static_cast<float>(shadow.depth) * smoothStep(half + soft, half - soft, beside);
    });
}

}  // namespace

LightOptions lightOn(const SceneOptions& options, double turned_deg)
{
    return {options.light.from_deg - turned_deg, options.light.elevation_deg, options.light.ambient,
            1};
}

cv::Mat lightField(cv::Size size, const SceneLight& light, cv::RNG& random)
{
    const double turn = light.from_deg * CV_PI / 180;
    const cv::Point2d to_lamp(std::cos(turn), std::sin(turn));
    const double reach = std::hypot(size.width, size.height) / 2;
    const cv::Mat patches = smoothNoise(size, reach * 0.55, random);
    cv::Mat field(size, CV_32FC1);
    field.forEach<float>([&](float& value, const int* at) {
        const double towards =
            ((at[1] - size.width / 2.0) * to_lamp.x + (at[0] - size.height / 2.0) * to_lamp.y) /
            reach;
        const double amount =
            1 + light.unevenness * (0.75 * towards - 0.12 + 0.16 * patches.at<float>(at[0], at[1]));
        value = static_cast<float>(std::max(0.08, amount));
    });
    for (const ShadowOptions& shadow : light.shadows)
        castShadow(field, shadow);
    return field;
}

cv::Mat tableAround(const cv::Mat& mask, const SceneOptions& options)
{
    const Surface table = tableTop(options.size_px, options.piece.table, options.seed + 5);
    cv::Mat radiance = lit(table, lightOn(options, 0));
    const double turn = options.light.from_deg * CV_PI / 180;
    const double length =
        7 / std::tan(std::clamp(options.light.elevation_deg, 12.0, 80.0) * CV_PI / 180);
    cv::Mat shadow, contact;
    cv::warpAffine(mask, shadow,
                   cv::Matx23d(1, 0, -length * std::cos(turn), 0, 1, -length * std::sin(turn)),
                   mask.size(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
    cv::GaussianBlur(shadow, shadow, {}, 2 + length * 0.25);
    cv::GaussianBlur(mask, contact, {}, 11);
    radiance.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int* at) {
        value *= (1 - 0.62F * shadow.at<float>(at[0], at[1])) *
                 (1 - 0.45F * contact.at<float>(at[0], at[1]));
    });
    return radiance;
}

}  // namespace synthetic
