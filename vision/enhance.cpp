#include "vision/enhance.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

namespace vision {

namespace {

double letterHeight(const RectifiedStamp& stamp)
{
    if (stamp.lines.empty())
        return std::max(8.0, 0.5 * stamp.pixels.rows);
    std::vector<double> heights;
    for (std::size_t i = 0; i < stamp.lines.size(); ++i)
        heights.push_back(lineHeight(stamp, i));
    std::sort(heights.begin(), heights.end());
    return std::max(8.0, heights[heights.size() / 2]);
}

// Divides the light out: the ground comes to 200 everywhere, ink keeps its ratio to it.
cv::Mat flatten(const cv::Mat& grey, double radius_px)
{
    cv::Mat value;
    grey.convertTo(value, CV_32F);
    value += 8.0;  // keeps the noise of deep shadow from being blown up
    cv::Mat light;
    // The small picture makes a wide blur cheap; light changes slowly.
    const double scale = std::min(1.0, 8.0 / radius_px);
    cv::Mat small;
    cv::resize(value, small, {}, scale, scale, cv::INTER_AREA);
    if (small.empty())
        small = value;
    cv::GaussianBlur(small, small, {}, radius_px * scale, 0, cv::BORDER_REPLICATE);
    cv::resize(small, light, value.size(), 0, 0, cv::INTER_LINEAR);
    cv::Mat flat = value / light * 170.0;
    cv::Mat result;
    flat.convertTo(result, CV_8U);
    return result;
}

int levelAt(const cv::Mat& grey, double part)
{
    int counts[256] = {};
    for (int y = 0; y < grey.rows; ++y)
        for (int x = 0; x < grey.cols; ++x)
            ++counts[grey.at<uchar>(y, x)];
    const double wanted = part * static_cast<double>(grey.total());
    double sum = 0;
    for (int level = 0; level < 256; ++level) {
        sum += counts[level];
        if (sum >= wanted)
            return level;
    }
    return 255;
}

// Ink covers less than the ground, so it is the longer tail of the levels within the lines.
bool inkIsLight(const cv::Mat& flat, const RectifiedStamp& stamp)
{
    cv::Rect2d lines;
    for (const cv::Rect2d& line : stamp.lines)
        lines = lines.empty() ? line : lines | line;
    const cv::Rect whole(0, 0, flat.cols, flat.rows);
    cv::Rect inner = cv::Rect(lines) & whole;
    if (inner.area() < 64)
        inner = whole;
    cv::Mat smooth;
    cv::GaussianBlur(flat(inner), smooth, {}, 1.0);
    const int middle = levelAt(smooth, 0.5);
    return levelAt(smooth, 0.97) - middle > middle - levelAt(smooth, 0.03);
}

cv::Mat stretched(const cv::Mat& grey)
{
    const int low = levelAt(grey, 0.01), high = levelAt(grey, 0.95);
    if (high <= low)
        return grey.clone();
    const double gain = std::min(6.0, 215.0 / (high - low));
    cv::Mat result;
    grey.convertTo(result, CV_8U, gain, 235 - gain * high);
    return result;
}

// Ink against ground by a threshold that follows both, softened over a tenth of the contrast.
cv::Mat inkPicture(const cv::Mat& grey, double letter_px)
{
    cv::Mat value, mean, square;
    cv::GaussianBlur(grey, value, {}, std::max(0.6, letter_px / 30));
    value.convertTo(value, CV_32F);
    const int window = 2 * static_cast<int>(letter_px / 2) + 1;
    cv::blur(value, mean, {window, window});
    cv::sqrBoxFilter(value, square, CV_32F, {window, window});
    cv::Mat variance = square - mean.mul(mean);
    cv::max(variance, 1.0, variance);
    cv::sqrt(variance, variance);
    cv::Mat scaled = (value - mean + 0.2 * variance) / (0.25 * variance + 4) * 127.0 + 128.0;
    cv::Mat result;
    scaled.convertTo(result, CV_8U);
    return result;
}

}  // namespace

const cv::Mat& EnhancedStamp::layer(const std::string& name) const
{
    for (const Layer& layer : layers)
        if (layer.name == name)
            return layer.grey;
    throw std::out_of_range("there is no layer called " + name);
}

EnhancedStamp enhanceStamp(const RectifiedStamp& stamp, const EnhanceOptions& options)
{
    if (stamp.pixels.empty())
        throw std::invalid_argument("enhanceStamp: the stamp has no pixels");
    if (!(options.flatten_radius > 0 && options.flatten_radius <= 50))
        throw std::invalid_argument("EnhanceOptions.flatten_radius must be above 0, at most 50");
    if (!(options.clip_limit > 0 && options.clip_limit <= 100))
        throw std::invalid_argument("EnhanceOptions.clip_limit must be above 0, at most 100");
    EnhancedStamp enhanced;
    enhanced.rectified = stamp;
    cv::Mat grey;
    if (stamp.pixels.channels() == 1)
        grey = stamp.pixels.clone();
    else
        cv::cvtColor(stamp.pixels, grey, cv::COLOR_BGR2GRAY);
    const double letter_px = letterHeight(stamp);
    cv::Mat flat = flatten(grey, options.flatten_radius * letter_px);
    enhanced.light_ink = inkIsLight(flat, stamp);
    if (enhanced.light_ink) {
        grey = 255 - grey;
        flat = 255 - flat;
    }
    const cv::Mat clear = stretched(flat);
    const int tiles = std::clamp(static_cast<int>(flat.rows / (2 * letter_px)), 1, 8);
    const int across = std::clamp(static_cast<int>(flat.cols / (2 * letter_px)), 1, 24);
    cv::Mat contrast;
    cv::createCLAHE(options.clip_limit, {across, tiles})->apply(clear, contrast);
    enhanced.layers = {{"grey", grey},
                       {"flat", clear},
                       {"contrast", contrast},
                       {"ink", inkPicture(clear, letter_px)}};
    return enhanced;
}

}  // namespace vision
