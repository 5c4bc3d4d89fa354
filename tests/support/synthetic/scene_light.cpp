#include "tests/support/synthetic/scene_light.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

#include "tests/support/synthetic/noise.h"
#include "tests/support/synthetic/table_top.h"

namespace synthetic {

LightOptions lightOn(const SceneOptions& options, double turned_deg)
{
    return {options.light.from_deg - turned_deg, options.light.elevation_deg, options.light.ambient,
            1};
}

void unevenLight(cv::Mat& radiance, const SceneLight& light, cv::RNG& random)
{
    const double turn = light.from_deg * CV_PI / 180;
    const cv::Point2d to_lamp(std::cos(turn), std::sin(turn));
    const double reach = std::hypot(radiance.cols, radiance.rows) / 2;
    const cv::Mat patches = smoothNoise(radiance.size(), reach * 0.55, random);
    radiance.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int* at) {
        const double towards = ((at[1] - radiance.cols / 2.0) * to_lamp.x +
                                (at[0] - radiance.rows / 2.0) * to_lamp.y) /
                               reach;
        const double amount =
            1 + light.unevenness * (0.75 * towards - 0.12 + 0.16 * patches.at<float>(at[0], at[1]));
        value *= static_cast<float>(std::max(0.08, amount));
    });
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
