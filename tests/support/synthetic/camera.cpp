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

void checkCamera(const CameraOptions& options)
{
    requireRange("exposure", options.exposure, 0.01, 100);
    requireRange("blur_px", options.blur_px, 0, 50);
    requireRange("noise", options.noise, 0, 1);
    requireRange("sharpening", options.sharpening, 0, 1);
    requireRange("vignetting", options.vignetting, 0, 1);
    requireRange("jpeg_quality", options.jpeg_quality, 0, 100);
    requireRange("defocus_px", options.defocus_px, 0, 50);
    requireRange("resolution", options.resolution, 0.1, 1);
}

// Sharp in a band across the photo's middle, softer towards its top and bottom.
void defocus(cv::Mat& light, double defocus_px)
{
    cv::Mat half, full;
    cv::GaussianBlur(light, half, {}, defocus_px / 2);
    cv::GaussianBlur(light, full, {}, defocus_px);
    const float middle = 0.54F * static_cast<float>(light.rows);
    light.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int* at) {
        const float away = std::abs(static_cast<float>(at[0]) - middle) / middle;
        const float amount = 2 * smoothStep(0.25F, 1.0F, away);
        const cv::Vec3f &soft = half.at<cv::Vec3f>(at[0], at[1]),
                        &softer = full.at<cv::Vec3f>(at[0], at[1]);
        value = amount < 1 ? value * (1 - amount) + soft * amount
                           : soft * (2 - amount) + softer * (amount - 1);
    });
}

cv::Mat reduced(const cv::Mat& light, double resolution)
{
    cv::Mat fewer;
    cv::resize(light, fewer, {}, resolution, resolution, cv::INTER_AREA);
    return fewer;
}

cv::Mat enlarged(const cv::Mat& light, cv::Size size)
{
    cv::Mat more;
    cv::resize(light, more, size, 0, 0, cv::INTER_CUBIC);
    return more;
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

cv::Mat vignette(cv::Size size, double vignetting)
{
    const float cx = static_cast<float>(size.width) / 2, cy = static_cast<float>(size.height) / 2;
    const float corner = cx * cx + cy * cy;
    cv::Mat kept(size, CV_32FC1);
    kept.forEach<float>([&](float& value, const int* at) {
        const float dx = static_cast<float>(at[1]) - cx, dy = static_cast<float>(at[0]) - cy;
        const float r2 = (dx * dx + dy * dy) / corner;
        value = 1 - static_cast<float>(vignetting) * r2 * (0.5F + 0.5F * r2);
    });
    return kept;
}

cv::Mat gathered(const cv::Mat& radiance, const CameraOptions& options)
{
    checkCamera(options);
    cv::Mat light = radiance.clone();
    if (options.blur_px > 0.05)
        cv::GaussianBlur(light, light, {}, options.blur_px);
    if (options.defocus_px > 0.05)
        defocus(light, options.defocus_px);
    const cv::Mat kept = vignette(light.size(), options.vignetting);
    light.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int* at) {
        value *= kept.at<float>(at[0], at[1]);
        for (int c = 0; c < 3; ++c)
            value[c] *= static_cast<float>(options.exposure) * options.cast_bgr[c];
    });
    if (options.resolution < 1)
        return enlarged(reduced(light, options.resolution), light.size());
    return light;
}

cv::Mat developed(const cv::Mat& light, const CameraOptions& options)
{
    cv::Mat picture(light.size(), CV_32FC3);
    picture.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int* at) {
        const auto& from = light.at<cv::Vec3f>(at[0], at[1]);
        for (int c = 0; c < 3; ++c)
            value[c] = 255 * encoded(from[c]);
    });
    if (options.sharpening > 0) {
        cv::Mat soft;
        cv::GaussianBlur(picture, soft, {}, 1.0);
        picture += options.sharpening * (picture - soft);
    }
    return picture;
}

cv::Mat photographed(const cv::Mat& radiance, const CameraOptions& options, std::uint32_t seed)
{
    cv::RNG random(seed);
    cv::Mat light = gathered(radiance, options);
    if (options.noise > 0 && options.resolution < 1) {  // each of the sensor's pixels has its own
        light = reduced(light, options.resolution);
        addNoise(light, options.noise, random);
        light = enlarged(light, radiance.size());
    } else if (options.noise > 0) {
        addNoise(light, options.noise, random);
    }
    cv::Mat picture;
    developed(light, options).convertTo(picture, CV_8UC3);
    if (options.jpeg_quality == 0)
        return picture;
    std::vector<unsigned char> bytes;
    cv::imencode(".jpg", picture, bytes, {cv::IMWRITE_JPEG_QUALITY, options.jpeg_quality});
    return cv::imdecode(bytes, cv::IMREAD_COLOR);
}

}  // namespace synthetic
