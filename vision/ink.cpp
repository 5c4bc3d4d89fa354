#include "vision/ink.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

#include <opencv2/imgproc.hpp>

namespace vision {

namespace {

double levelAt(std::vector<uchar>& levels, double part)
{
    if (levels.empty())
        return 0;
    const auto at = static_cast<std::ptrdiff_t>(part * static_cast<double>(levels.size() - 1));
    std::nth_element(levels.begin(), levels.begin() + at, levels.end());
    return levels[static_cast<std::size_t>(at)];
}

}  // namespace

InkEvidence measureInk(const cv::Mat& grey, const cv::Rect2d& box)
{
    if (grey.empty() || grey.type() != CV_8UC1)
        throw std::invalid_argument("measureInk: the picture must be CV_8UC1 and not empty");
    const cv::Rect whole(0, 0, grey.cols, grey.rows);
    const cv::Rect inner = cv::Rect(box) & whole;
    if (inner.area() < 16)
        return {};
    const int rim = std::max(2, static_cast<int>(box.height * 0.4));
    const cv::Rect outer =
        cv::Rect(inner.x - rim, inner.y - rim, inner.width + 2 * rim, inner.height + 2 * rim) &
        whole;
    cv::Mat smooth;
    // Threads are thinner than strokes: what a stroke's width averages away is weave.
    cv::GaussianBlur(grey(outer), smooth, {}, std::max(0.5, box.height / 16));
    std::vector<uchar> inside, all;
    for (int y = 0; y < outer.height; ++y)
        for (int x = 0; x < outer.width; ++x) {
            const uchar level = smooth.at<uchar>(y, x);
            all.push_back(level);
            if (inner.contains({outer.x + x, outer.y + y}))
                inside.push_back(level);
        }
    const double ground = std::max(1.0, levelAt(all, 0.65));
    const double ink = levelAt(inside, 0.08);
    const double spread = std::max(1.0, levelAt(all, 0.9) - ground);
    InkEvidence evidence;
    evidence.step = std::clamp((ground - ink) / ground, 0.0, 1.0);
    evidence.ratio = std::max(0.0, ground - ink) / spread;
    const double middle = (ground + ink) / 2;
    const auto dark =
        std::count_if(inside.begin(), inside.end(), [&](uchar level) { return level < middle; });
    evidence.cover = static_cast<double>(dark) / static_cast<double>(inside.size());
    return evidence;
}

}  // namespace vision
