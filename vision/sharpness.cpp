#include "vision/sharpness.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>
#include <vector>

#include <opencv2/imgproc.hpp>

namespace vision {

namespace {

constexpr double noise_blur_px = 1;  // takes the camera's noise, whose edges are the steepest
constexpr double blurred_by_px = 2;  // once more, to see what it does
constexpr double difference_blur_px = 0.5;  // of the differences by which steepness is measured
const double own_blur_px = std::hypot(noise_blur_px, difference_blur_px);
constexpr int directions = 6;            // into which edges are sorted
constexpr std::size_t least_edges = 40;  // of a direction, to judge by
constexpr double steepest_share = 0.1;   // of the edges of a direction, those that count
constexpr float least_steepness = 1;     // grey levels a pixel
constexpr double crossed_by_times =
    1.6;  // as blurred edges across a movement are as those along it
constexpr double least_move_px = 3;
constexpr double told_to_px = 4;     // of blur, in a picture that is not made smaller
constexpr int least_halved_px = 16;  // of a picture that is

struct Gradients {
    cv::Mat x, y, steepness;  // CV_32FC1
};

Gradients gradientsOf(const cv::Mat& level)
{
    Gradients gradients;
    const cv::Mat difference = (cv::Mat_<float>(1, 3) << -0.5F, 0, 0.5F);
    cv::filter2D(level, gradients.x, CV_32F, difference);
    cv::filter2D(level, gradients.y, CV_32F, difference.t());
    cv::magnitude(gradients.x, gradients.y, gradients.steepness);
    return gradients;
}

// Whether no neighbour across the edge is steeper.
bool isRidge(const Gradients& g, int x, int y)
{
    const float steepness = g.steepness.at<float>(y, x);
    const int dx = cvRound(g.x.at<float>(y, x) / steepness);
    const int dy = cvRound(g.y.at<float>(y, x) / steepness);
    return steepness >= g.steepness.at<float>(y + dy, x + dx) &&
           steepness >= g.steepness.at<float>(y - dy, x - dx);
}

struct Edge {
    double steepness = 0;
    double ratio = 0;  // how many times steeper it was before it was blurred once more
};

// Edges by the direction in which they are crossed: the first about the x axis.
using Edges = std::array<std::vector<Edge>, directions>;

Edges edgesOf(const cv::Mat& grey)
{
    cv::Mat level, smoother;
    grey.convertTo(level, CV_32F);
    cv::GaussianBlur(level, level, {}, noise_blur_px);
    cv::GaussianBlur(level, smoother, {}, blurred_by_px);
    const Gradients before = gradientsOf(level), after = gradientsOf(smoother);
    Edges edges;
    for (int y = 1; y + 1 < grey.rows; ++y)
        for (int x = 1; x + 1 < grey.cols; ++x) {
            const float was = before.steepness.at<float>(y, x);
            if (was < least_steepness || !isRidge(before, x, y))
                continue;
            const double turn = std::atan2(before.y.at<float>(y, x), before.x.at<float>(y, x));
            const int bin = cvRound(turn / CV_PI * directions) + 2 * directions;
            edges[static_cast<std::size_t>(bin % directions)].push_back(
                {was, was / std::max(after.steepness.at<float>(y, x), 1e-3F)});
        }
    return edges;
}

// Of the steepest, the middle one's ratio: the others are noise and threads.
double ratioOf(std::vector<Edge>& edges)
{
    const std::size_t steepest = std::max(
        least_edges, static_cast<std::size_t>(steepest_share * static_cast<double>(edges.size())));
    const auto end = edges.begin() + static_cast<std::ptrdiff_t>(steepest);
    std::nth_element(edges.begin(), end - 1, edges.end(),
                     [](const Edge& a, const Edge& b) { return a.steepness > b.steepness; });
    const auto middle = edges.begin() + static_cast<std::ptrdiff_t>(steepest / 2);
    std::nth_element(edges.begin(), middle, end,
                     [](const Edge& a, const Edge& b) { return a.ratio < b.ratio; });
    return middle->ratio;
}

// Steepness at the edge of a stroke that is blurred with a deviation, for a contrast of the root of
// two pi.
double steepnessAt(double blur_px, double stroke_px)
{
    const double widths = stroke_px / blur_px;
    return (1 - std::exp(-widths * widths / 2)) / blur_px;
}

// The blur at which a further one makes a stroke's edge so many times less steep.
double blurFrom(double ratio, double stroke_px)
{
    double low = own_blur_px, high = 60;
    while (high - low > 0.01) {
        const double middle = (low + high) / 2;
        const double further = std::hypot(middle, blurred_by_px);
        const bool less = steepnessAt(middle, stroke_px) / steepnessAt(further, stroke_px) > ratio;
        (less ? low : high) = middle;
    }
    return std::sqrt(std::max(0.0, low * low - own_blur_px * own_blur_px));
}

// The directions in which edges are blurred least and most.
struct Extremes {
    double least = 1e9, most = -1;
    std::size_t most_at = 0, judged = 0;

    // An even movement over a way spreads a point with a deviation of the way over the root of 12.
    double way() const { return std::sqrt(12 * (most * most - least * least)); }
};

Extremes extremesOf(const cv::Mat& grey, double stroke_px)
{
    Edges edges = edgesOf(grey);
    Extremes found;
    for (std::size_t i = 0; i < edges.size(); ++i) {
        if (edges[i].size() < least_edges)
            continue;
        ++found.judged;
        const double blur = blurFrom(ratioOf(edges[i]), stroke_px);
        found.least = std::min(found.least, blur);
        if (blur > found.most) {
            found.most = blur;
            found.most_at = i;
        }
    }
    return found;
}

// The same in a picture half as large, in pixels of the whole one: a little more blur tells nothing
// of edges that are blurred much already, and threads and the camera's own edges outdo them. There
// it says too much, in the whole picture too little: what is told is their geometric mean.
Extremes halvedExtremesOf(const cv::Mat& grey, double stroke_px)
{
    cv::Mat half;
    cv::resize(grey, half, {}, 0.5, 0.5, cv::INTER_AREA);
    Extremes found = extremesOf(half, stroke_px / 2);
    found.least *= 2;
    found.most *= 2;
    return found;
}

}  // namespace

Sharpness measureSharpness(const cv::Mat& grey, double stroke_px)
{
    if (grey.empty() || grey.type() != CV_8UC1)
        throw std::invalid_argument("measureSharpness: the picture must be CV_8UC1, not empty");
    if (!(stroke_px > 0))
        throw std::invalid_argument("measureSharpness: the strokes' width must be positive");
    const Extremes found = extremesOf(grey, stroke_px);
    if (found.judged == 0)
        return {};
    Sharpness sharpness{found.least, 0, 0};
    const bool moved = found.judged >= 2 && found.most > crossed_by_times * found.least &&
                       found.way() >= least_move_px;
    if (!moved && found.least < told_to_px)
        return sharpness;
    const Extremes halved = std::min(grey.rows, grey.cols) >= least_halved_px
                                ? halvedExtremesOf(grey, stroke_px)
                                : Extremes{};
    if (found.least >= told_to_px && halved.judged > 0)
        sharpness.blur_px = std::sqrt(found.least * halved.least);
    if (moved) {
        sharpness.moved_px =
            halved.judged >= 2 ? std::sqrt(found.way() * halved.way()) : found.way();
        sharpness.moved_deg = static_cast<double>(found.most_at) * 180 / directions;
    }
    return sharpness;
}

}  // namespace vision
