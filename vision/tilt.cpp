#include "vision/tilt.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

#include <opencv2/imgproc.hpp>

namespace vision {

namespace {

constexpr int longest_side_px = 320;  // a quarter of a degree still moves a line's end by a pixel
constexpr double stands_out = 1.1;    // how much sharper a tilt must be than none

// How far each pixel differs from its surroundings, CV_32FC1, small differences taken for weave.
cv::Mat inkOf(const cv::Mat& grey)
{
    cv::Mat small = grey;
    const int longest = std::max(grey.cols, grey.rows);
    if (longest > longest_side_px) {
        const double scale = static_cast<double>(longest_side_px) / longest;
        cv::resize(grey, small, {}, scale, scale, cv::INTER_AREA);
    }
    cv::Mat level, smooth, ink;
    small.convertTo(level, CV_32F);
    cv::GaussianBlur(level, smooth, {}, 1.2);
    cv::GaussianBlur(level, level, {}, std::max(4.0, std::min(small.cols, small.rows) / 5.0));
    cv::absdiff(smooth, level, ink);
    cv::Scalar mean, deviation;
    cv::meanStdDev(ink, mean, deviation);
    ink -= mean[0] + 0.5 * deviation[0];
    cv::max(ink, 0, ink);
    return ink;
}

// How sharply rows along the direction differ from one another.
double sharpness(const cv::Mat& ink, double tilt_deg)
{
    const double a = tilt_deg * CV_PI / 180, c = std::cos(a), s = std::sin(a);
    const double lowest = std::min(0.0, -s * ink.cols);
    const double highest = c * ink.rows + std::max(0.0, -s * ink.cols);
    std::vector<double> sum(static_cast<std::size_t>(highest - lowest) + 2, 0), count(sum);
    for (int y = 0; y < ink.rows; ++y) {
        const float* row = ink.ptr<float>(y);
        for (int x = 0; x < ink.cols; ++x) {
            const auto bin = static_cast<std::size_t>(-s * x + c * y - lowest);
            sum[bin] += row[x];
            ++count[bin];
        }
    }
    const double most = *std::max_element(count.begin(), count.end());
    double sharp = 0;
    for (std::size_t i = 0; i + 1 < sum.size(); ++i) {
        const double weight = std::min(count[i], count[i + 1]);
        if (weight < 0.1 * most)
            continue;
        const double step = sum[i + 1] / count[i + 1] - sum[i] / count[i];
        sharp += weight * step * step;
    }
    return sharp;
}

}  // namespace

double tiltOfText(const cv::Mat& grey, double most_deg)
{
    if (grey.empty() || grey.type() != CV_8UC1)
        throw std::invalid_argument("tiltOfText: the picture must be CV_8UC1 and not empty");
    if (!(most_deg > 0 && most_deg <= 45))
        throw std::invalid_argument("tiltOfText: most_deg must be over 0 and at most 45");
    if (std::min(grey.cols, grey.rows) < 8)
        return 0;
    const cv::Mat ink = inkOf(grey);
    const double level = sharpness(ink, 0);
    double best_deg = 0, best = level;
    const auto look = [&](double from_deg, double to_deg, double step_deg) {
        for (double deg = from_deg; deg <= to_deg + 1e-9; deg += step_deg) {
            const double sharp = sharpness(ink, deg);
            if (sharp > best) {
                best = sharp;
                best_deg = deg;
            }
        }
    };
    look(-most_deg, most_deg, 1);
    if (best <= stands_out * level)
        return 0;
    look(std::max(-most_deg, best_deg - 1), std::min(most_deg, best_deg + 1), 0.25);
    return best_deg;
}

}  // namespace vision
