#include "tests/support/synthetic/lighting.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

namespace synthetic {
namespace {

// Share of direct light that higher ground towards the light leaves, 0 to 1.
cv::Mat unshadowed(const cv::Mat& height, const cv::Vec3f& light)
{
    const float flat = std::hypot(light[0], light[1]);
    const float rise_a_px = light[2] / std::max(flat, 0.05F);
    cv::Mat blocked = cv::Mat::zeros(height.size(), CV_32FC1);
    for (const float reach_px : {1.5F, 3.0F, 6.0F, 12.0F}) {
        const double dx = light[0] / flat * reach_px, dy = light[1] / flat * reach_px;
        cv::Mat towards_light;
        cv::warpAffine(height, towards_light, cv::Matx23d(1, 0, dx, 0, 1, dy), height.size(),
                       cv::INTER_LINEAR | cv::WARP_INVERSE_MAP, cv::BORDER_REPLICATE);
        cv::Mat above = towards_light - height - cv::Scalar(rise_a_px * reach_px);
        cv::max(blocked, above, blocked);
    }
    cv::Mat shadow;
    cv::min(blocked * 1.2, 1.0, shadow);
    cv::GaussianBlur(shadow, shadow, {}, 0.7);
    return 1.0 - 0.75 * shadow;
}

// Ground lower than its surroundings sees less of the room.
cv::Mat openness(const cv::Mat& height)
{
    cv::Mat around, wide;
    cv::GaussianBlur(height, around, {}, 2.5);
    cv::GaussianBlur(height, wide, {}, 9);
    cv::Mat hollow = 0.5 * (around - height) + 0.25 * (wide - height);
    cv::max(hollow, 0.0, hollow);
    cv::Mat open = 1.0 - 0.30 * hollow;
    cv::max(open, 0.35, open);
    return open;
}

cv::Vec3f towardsLight(const LightOptions& options)
{
    const double turn = options.from_deg * CV_PI / 180, rise = options.elevation_deg * CV_PI / 180;
    return {static_cast<float>(std::cos(turn) * std::cos(rise)),
            static_cast<float>(std::sin(turn) * std::cos(rise)),
            static_cast<float>(std::sin(rise))};
}

}  // namespace

Shading shadingOf(const Surface& surface, const LightOptions& options)
{
    if (options.elevation_deg < 5 || options.elevation_deg > 90)
        throw std::invalid_argument("LightOptions::elevation_deg must be 5 to 90");
    if (options.ambient < 0 || options.ambient > 1)
        throw std::invalid_argument("LightOptions::ambient must be 0 to 1");
    const cv::Mat height = surface.height * options.relief;
    const cv::Vec3f light = towardsLight(options);
    const cv::Mat direct = unshadowed(height, light), open = openness(height);
    cv::Mat slope_x, slope_y;
    cv::Scharr(height, slope_x, CV_32F, 1, 0, 1.0 / 32);
    cv::Scharr(height, slope_y, CV_32F, 0, 1, 1.0 / 32);

    const auto ambient = static_cast<float>(options.ambient);
    const cv::Vec3f half = cv::normalize(light + cv::Vec3f(0, 0, 1));
    Shading shading{cv::Mat(height.size(), CV_32FC1), cv::Mat(height.size(), CV_32FC1)};
    shading.amount.forEach<float>([&](float& amount, const int* at) {
        const int y = at[0], x = at[1];
        const cv::Vec3f normal =
            cv::normalize(cv::Vec3f(-slope_x.at<float>(y, x), -slope_y.at<float>(y, x), 1.0F));
        // Fibres let light through: it wraps a little around their edges.
        const float facing = std::max(0.0F, (normal.dot(light) + 0.25F) / 1.25F);
        const float sun = direct.at<float>(y, x), gloss = surface.gloss.at<float>(y, x);
        amount = ambient * open.at<float>(y, x) +
                 (1 - ambient) * facing * sun / std::max(0.35F, light[2]);
        shading.shine.at<float>(y, x) =
            gloss > 0
                ? gloss * sun * std::pow(std::max(0.0F, normal.dot(half)), 28.0F) * (1 - ambient)
                : 0;
    });
    return shading;
}

cv::Mat shaded(const cv::Mat& albedo, const Shading& shading)
{
    cv::Mat radiance(albedo.size(), CV_32FC3);
    radiance.forEach<cv::Vec3f>([&](cv::Vec3f& out, const int* at) {
        const int y = at[0], x = at[1];
        out = albedo.at<cv::Vec3f>(y, x) * shading.amount.at<float>(y, x) +
              cv::Vec3f::all(0.16F * shading.shine.at<float>(y, x));
    });
    return radiance;
}

cv::Mat lit(const Surface& surface, const LightOptions& options)
{
    return shaded(surface.albedo, shadingOf(surface, options));
}

}  // namespace synthetic
