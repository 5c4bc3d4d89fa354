#include "tests/support/synthetic/noise.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace synthetic {

float hashed(int a, int b, std::uint32_t seed)
{
    // Odd constants with well-mixed bits; any would do that leave no visible pattern.
    std::uint32_t bits = static_cast<std::uint32_t>(a) * 0x8DA6B343U ^
                         static_cast<std::uint32_t>(b) * 0xD8163841U ^ seed * 0xCB1AB31FU;
    bits ^= bits >> 15;
    bits *= 0x2C1B3C6DU;
    bits ^= bits >> 12;
    bits *= 0x297A2D39U;
    bits ^= bits >> 15;
    return static_cast<float>(bits >> 8) / 16777216.0F;
}

float hashedAlong(float at, int which, std::uint32_t seed)
{
    const float floor = std::floor(at);
    const int cell = static_cast<int>(floor);
    const float t = smoothStep(0, 1, at - floor);
    return (1 - t) * hashed(cell, which, seed) + t * hashed(cell + 1, which, seed);
}

cv::Mat smoothNoise(cv::Size size, double scale_px, cv::RNG& random, double stretch)
{
    // A margin of two cells keeps the cubic's border, which repeats, out of the picture.
    const cv::Size2d cell(scale_px * stretch, scale_px);
    const cv::Size coarse_size(static_cast<int>(std::ceil(size.width / cell.width)) + 5,
                               static_cast<int>(std::ceil(size.height / cell.height)) + 5);
    cv::Mat coarse(coarse_size, CV_32FC1);
    random.fill(coarse, cv::RNG::NORMAL, 0, 1);
    const cv::Matx23d coarse_from_fine(1 / cell.width, 0, 2, 0, 1 / cell.height, 2);
    cv::Mat fine;
    cv::warpAffine(coarse, fine, coarse_from_fine, size, cv::INTER_CUBIC | cv::WARP_INVERSE_MAP,
                   cv::BORDER_REFLECT);
    return fine * 1.25;  // interpolation between cells takes a fifth of the deviation
}

cv::Mat grainNoise(cv::Size size, cv::RNG& random)
{
    cv::Mat grain(size, CV_32FC1);
    random.fill(grain, cv::RNG::NORMAL, 0, 1);
    return grain;
}

float smoothStep(float low, float high, float value)
{
    const float t = std::clamp((value - low) / (high - low), 0.0F, 1.0F);
    return t * t * (3 - 2 * t);
}

}  // namespace synthetic
