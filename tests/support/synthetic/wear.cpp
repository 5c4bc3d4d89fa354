#include "tests/support/synthetic/wear.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <opencv2/imgproc.hpp>

#include "tests/support/synthetic/noise.h"

namespace synthetic {

void letLieUneven(Surface& surface, double waviness, double finer, cv::RNG& random)
{
    const cv::Size size = surface.height.size();
    surface.height += smoothNoise(size, 240 * finer, random, 1.5) * (7 * finer * waviness) +
                      smoothNoise(size, 70 * finer, random, 1.5) * (1.1 * finer * waviness);
}

cv::Mat fold(Surface& surface, const Crease& crease, cv::RNG& random)
{
    const cv::Size size = surface.height.size();
    const cv::Mat bend = smoothNoise(size, 150, random) * 9 + smoothNoise(size, 30, random) * 1.6;
    const cv::Mat strength = smoothNoise(size, 160, random);
    const cv::Mat rub = smoothNoise(size, 7, random);
    const double turn = crease.turn_deg * CV_PI / 180;
    const auto nx = static_cast<float>(-std::sin(turn)), ny = static_cast<float>(std::cos(turn));
    const auto width = static_cast<float>(crease.width_px);
    const auto half_length = static_cast<float>(crease.length_px / 2);
    cv::Mat stays(size, CV_32FC1, 1.0F);
    surface.height.forEach<float>([&](float& height, const int* at) {
        const int y = at[0], x = at[1];
        const float beside = (static_cast<float>(x) - static_cast<float>(crease.through.x)) * nx +
                             (static_cast<float>(y) - static_cast<float>(crease.through.y)) * ny +
                             bend.at<float>(y, x);
        const float d = std::abs(beside) / width;
        if (d > 9)
            return;
        float here = std::clamp(0.65F + 0.45F * strength.at<float>(y, x), 0.0F, 1.3F);
        if (half_length > 0) {
            const float along =
                (static_cast<float>(x) - static_cast<float>(crease.through.x)) * ny -
                (static_cast<float>(y) - static_cast<float>(crease.through.y)) * nx;
            here *= smoothStep(half_length, 0.35F * half_length, std::abs(along));
        }
        // A sharp back on a broad fold, steeper on one side.
        const float lean = beside > 0 ? 0.6F : 1.0F;
        const float back = std::exp(-d * d), wide = std::exp(-d * d * lean / 14);
        height += here * static_cast<float>(crease.height_px) * (0.35F * back + 0.9F * wide);
        const float rubbed = 0.8F * here * smoothStep(0.55F, 1.0F, back) *
                             smoothStep(-1.4F, 1.0F, rub.at<float>(y, x)) *
                             surface.take.at<float>(y, x);
        surface.albedo.at<cv::Vec3f>(y, x) *= 1 + 0.30F * rubbed;
        stays.at<float>(y, x) = 1 - 0.75F * std::min(1.0F, rubbed);
    });
    return stays;
}

void stain(Surface& surface, const Stain& stain, cv::RNG& random)
{
    const cv::Size size = surface.height.size();
    const double radius = stain.radius_px;
    const cv::Mat shore = smoothNoise(size, radius * 0.6, random) * 0.15 +
                          smoothNoise(size, radius * 0.2, random) * 0.05 +
                          smoothNoise(size, radius * 0.05, random) * 0.02;
    const cv::Mat depth = smoothNoise(size, radius * 0.4, random);
    const cv::Mat drying = smoothNoise(size, radius * 0.8, random);
    const cv::Vec3f tint = linearColour(stain.colour_bgr) * 2.4F;
    surface.albedo.forEach<cv::Vec3f>([&](cv::Vec3f& albedo, const int* at) {
        const int y = at[0], x = at[1];
        const auto r = static_cast<float>(
            std::hypot((x - stain.centre.x) / 1.25, y - stain.centre.y) / radius +
            shore.at<float>(y, x));
        if (r > 1.3F)
            return;
        // Where it dried slowly it left a tide line; elsewhere it just fades out.
        const float sharp = smoothStep(-0.8F, 1.2F, drying.at<float>(y, x));
        const float inside =
            sharp * smoothStep(1.03F, 0.93F, r) + (1 - sharp) * smoothStep(1.25F, 0.45F, r);
        const float tide = sharp * inside * smoothStep(0.78F, 0.97F, r);
        const float lower = 0.6F + 0.4F * (1 - surface.take.at<float>(y, x));  // it sinks in
        const float amount =
            static_cast<float>(stain.strength) * lower *
            std::clamp(inside * (0.72F + 0.2F * depth.at<float>(y, x)) + 0.28F * tide, 0.0F, 1.0F);
        for (int c = 0; c < 3; ++c)
            albedo[c] *= 1 - amount * (1 - std::min(0.95F, tint[c]));
    });
}

void raiseFuzz(Surface& surface, const cv::Vec3b& colour_bgr, double amount, double finer,
               cv::RNG& random)
{
    const cv::Size size = surface.height.size();
    cv::Mat fibres = cv::Mat::zeros(size, CV_8UC1);
    const double area = static_cast<double>(size.width) * size.height / (finer * finer);
    const int count = cvRound(amount * area / 420);
    constexpr int subpixel_bits = 4, subpixel = 1 << subpixel_bits;
    for (int i = 0; i < count; ++i) {
        cv::Point2d at(random.uniform(0.0, size.width * 1.0),
                       random.uniform(0.0, size.height * 1.0));
        double turn = random.uniform(0.0, 2 * CV_PI);
        const double bend = random.gaussian(0.28);
        const int pieces = 4 + static_cast<int>(random.uniform(0.0, 1.0) * random.uniform(2, 12));
        std::vector<cv::Point> course;
        for (int k = 0; k < pieces; ++k) {
            course.emplace_back(cvRound(at.x * subpixel), cvRound(at.y * subpixel));
            turn += bend + random.gaussian(0.15);
            at += cv::Point2d(std::cos(turn), std::sin(turn)) * (2.3 * finer);
        }
        cv::polylines(fibres, course, false, random.uniform(60, 220), 1, cv::LINE_AA,
                      subpixel_bits);
    }
    const cv::Vec3f light = linearColour(colour_bgr) * 1.35F + cv::Vec3f::all(0.03F);
    surface.albedo.forEach<cv::Vec3f>([&](cv::Vec3f& albedo, const int* at) {
        const float share = 0.42F * static_cast<float>(fibres.at<uchar>(at[0], at[1])) / 255;
        albedo = albedo * (1 - share) + light * share;
        surface.height.at<float>(at[0], at[1]) += 2.6F * share;
    });
}

}  // namespace synthetic
