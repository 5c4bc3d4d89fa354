#include "tests/support/synthetic/camera.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>

#include "tests/support/synthetic/noise.h"

namespace synthetic {
namespace {

void requireRange(const char* field, double value, double low, double high)
{
    if (!(value >= low && value <= high))
        throw std::invalid_argument(std::string("CameraOptions::") + field + " is out of range");
}

void check(const CameraOptions& options)
{
    requireRange("exposure", options.exposure, 0.01, 100);
    requireRange("blur_px", options.blur_px, 0, 50);
    requireRange("noise", options.noise, 0, 1);
    requireRange("sharpening", options.sharpening, 0, 1);
    requireRange("vignetting", options.vignetting, 0, 1);
    requireRange("jpeg_quality", options.jpeg_quality, 0, 100);
}

void darkenCorners(cv::Mat& light, double vignetting)
{
    const float cx = static_cast<float>(light.cols) / 2, cy = static_cast<float>(light.rows) / 2;
    const float corner = cx * cx + cy * cy;
    light.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int* at) {
        const float dx = static_cast<float>(at[1]) - cx, dy = static_cast<float>(at[0]) - cy;
        const float r2 = (dx * dx + dy * dy) / corner;
        value *= 1 - static_cast<float>(vignetting) * r2 * (0.5F + 0.5F * r2);
    });
}

// Shot and read-out noise, a little blotchy, as interpolation between colour filters leaves it.
void addNoise(cv::Mat& light, double noise, cv::RNG& random)
{
    std::vector<cv::Mat> channels(3);
    const double strength[3] = {1.25, 0.8, 1.1};
    for (std::size_t c = 0; c < 3; ++c) {
        cv::Mat grain = grainNoise(light.size(), random), blotches;
        cv::GaussianBlur(grainNoise(light.size(), random), blotches, {}, 1.1);
        channels[c] = (0.55 * grain + 1.9 * blotches) * (noise * strength[c]);
    }
    cv::Mat grains;
    cv::merge(channels, grains);
    light.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int* at) {
        const auto& grain = grains.at<cv::Vec3f>(at[0], at[1]);
        for (int c = 0; c < 3; ++c)
            value[c] += grain[c] * (0.0022F + 0.021F * std::sqrt(std::max(0.0F, value[c])));
    });
}

// sRGB (IEC 61966-2-1) with a gentle shoulder, so that highlights roll off as cameras let them.
float encoded(float linear)
{
    const float soft = linear < 0.7F ? linear : 1 - 0.3F * std::exp(-(linear - 0.7F) / 0.3F);
    const float value = std::clamp(soft, 0.0F, 1.0F);
    return value <= 0.0031308F ? 12.92F * value : 1.055F * std::pow(value, 1 / 2.4F) - 0.055F;
}

}  // namespace

cv::Mat photographed(const cv::Mat& radiance, const CameraOptions& options, std::uint32_t seed)
{
    check(options);
    cv::RNG random(seed);
    cv::Mat light = radiance.clone();
    if (options.blur_px > 0.05)
        cv::GaussianBlur(light, light, {}, options.blur_px);
    darkenCorners(light, options.vignetting);
    light.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int*) {
        for (int c = 0; c < 3; ++c)
            value[c] *= static_cast<float>(options.exposure) * options.cast_bgr[c];
    });
    if (options.noise > 0)
        addNoise(light, options.noise, random);
    light.forEach<cv::Vec3f>([](cv::Vec3f& value, const int*) {
        for (int c = 0; c < 3; ++c)
            value[c] = 255 * encoded(value[c]);
    });
    if (options.sharpening > 0) {
        cv::Mat soft;
        cv::GaussianBlur(light, soft, {}, 1.0);
        light += options.sharpening * (light - soft);
    }
    cv::Mat picture;
    light.convertTo(picture, CV_8UC3);
    if (options.jpeg_quality == 0)
        return picture;
    std::vector<unsigned char> bytes;
    cv::imencode(".jpg", picture, bytes, {cv::IMWRITE_JPEG_QUALITY, options.jpeg_quality});
    return cv::imdecode(bytes, cv::IMREAD_COLOR);
}

}  // namespace synthetic
