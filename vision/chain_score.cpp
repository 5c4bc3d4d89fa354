#include "vision/chain_score.h"

#include <algorithm>
#include <cmath>

namespace vision {

namespace {

double mean(const std::vector<double>& values)
{
    double sum = 0;
    for (const double v : values)
        sum += v;
    return values.empty() ? 0 : sum / static_cast<double>(values.size());
}

double spread(const std::vector<double>& values)
{
    const double m = mean(values);
    double sum = 0;
    for (const double v : values)
        sum += (v - m) * (v - m);
    return values.empty() ? 0 : std::sqrt(sum / static_cast<double>(values.size()));
}

double median(std::vector<double> values)
{
    if (values.empty())
        return 0;
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

// Pieces that could be letters of the chain by size and contrast, but stand beside it: weave has
// them on all sides, writing only where other lines are.
double clutterAround(const LetterChain& chain, const std::vector<LetterPiece>& pieces,
                     const PieceGrid& grid, double height, double contrast)
{
    const LetterPiece& first = pieces[static_cast<std::size_t>(chain.members.front())];
    const cv::Point2f u = (chain.corners[1] - chain.corners[0]) /
                          std::max(1.0, cv::norm(chain.corners[1] - chain.corners[0]));
    const cv::Point2f n(-u.y, u.x);
    const cv::Point2f middle = (chain.corners[0] + chain.corners[2]) / 2;
    const double half_length = cv::norm(chain.corners[1] - chain.corners[0]) / 2 + 2 * height;
    const double half_depth = 2.5 * height;
    int count = 0;
    for (const int i : grid.near(middle, static_cast<float>(std::hypot(half_length, half_depth)))) {
        const LetterPiece& piece = pieces[static_cast<std::size_t>(i)];
        const cv::Point2f d = piece.centre - middle;
        if (piece.level != first.level || piece.light != first.light ||
            std::abs(d.dot(u)) > half_length || std::abs(d.dot(n)) > half_depth)
            continue;
        if (piece.size_px > 0.5 * height && piece.size_px < 2 * height &&
            piece.contrast > 0.6 * contrast)
            ++count;
    }
    const double beside = count - static_cast<double>(chain.members.size());
    const double area = 4 * half_length * half_depth - 2 * (half_length - 2 * height) * height;
    return std::max(0.0, beside) * height * height / area;
}

}  // namespace

ChainTraits traitsOf(const LetterChain& chain, const std::vector<LetterPiece>& pieces,
                     const PieceGrid& grid)
{
    const double angle = chain.angle_deg * CV_PI / 180;
    const cv::Point2f u(static_cast<float>(std::cos(angle)), static_cast<float>(std::sin(angle)));
    const cv::Point2f n(-u.y, u.x);
    std::vector<double> heights, widths, tops, bottoms, contrasts, separations, log_contrasts,
        strokes, log_strokes, gaps, fills;
    double previous_end = 0;
    for (const int i : chain.members) {
        const LetterPiece& piece = pieces[static_cast<std::size_t>(i)];
        double top = 1e9, bottom = -1e9, left = 1e9, right = -1e9;
        for (const cv::Point2f& p : piece.hull) {
            top = std::min<double>(top, p.dot(n));
            bottom = std::max<double>(bottom, p.dot(n));
            left = std::min<double>(left, p.dot(u));
            right = std::max<double>(right, p.dot(u));
        }
        if (!heights.empty())
            gaps.push_back(left - previous_end);
        previous_end = right;
        heights.push_back(bottom - top + 1);
        widths.push_back(right - left + 1);
        tops.push_back(top);
        bottoms.push_back(bottom);
        contrasts.push_back(piece.contrast);
        separations.push_back(piece.separation);
        log_contrasts.push_back(std::log(piece.contrast));
        strokes.push_back(piece.stroke_px);
        log_strokes.push_back(std::log(piece.stroke_px));
        fills.push_back(piece.fill);
    }
    ChainTraits traits;
    const double height = std::max(1.0, mean(heights));
    traits.letters = static_cast<double>(chain.members.size());
    traits.contrast = median(contrasts);
    traits.separation = median(separations);
    traits.clutter = clutterAround(chain, pieces, grid, height, traits.contrast);
    traits.height_px = height;
    traits.height_spread = spread(heights) / height;
    traits.edge_misfit = std::min(spread(tops), spread(bottoms)) / height;
    traits.contrast_spread = spread(log_contrasts);
    traits.stroke_spread = spread(log_strokes);
    traits.stroke_share = median(strokes) / height;
    traits.width_spread = spread(widths) / height;
    double narrow = 0;
    for (std::size_t i = 0; i < widths.size(); ++i)
        narrow += widths[i] < 0.25 * heights[i] ? 1 : 0;
    traits.narrow_share = narrow / traits.letters;
    traits.gap_spread = spread(gaps) / height;
    traits.mean_gap = mean(gaps) / height;
    traits.mean_fill = mean(fills);
    return traits;
}

double scoreChain(const LetterChain& chain, const std::vector<LetterPiece>& pieces,
                  const PieceGrid& grid)
{
    const ChainTraits t = traitsOf(chain, pieces, grid);
    const double log_letters = std::log(std::min(t.letters, 14.0));
    const double log_heights = std::log(t.height_spread + 0.02);
    const double log_misfit = std::log(t.edge_misfit + 0.01);
    const double logit = -12.5 - 0.74 * log_letters + 0.19 * std::log(std::max(t.contrast, 0.01)) +
                         3.70 * std::min(t.separation, 5.0) - 1.57 * std::log(t.clutter + 0.05) -
                         1.00 * log_heights - 0.01 * log_misfit + 4.03 * t.contrast_spread +
                         3.05 * t.stroke_spread - 4.62 * t.stroke_share - 1.05 * t.width_spread -
                         0.30 * t.narrow_share + 0.66 * std::log(t.gap_spread + 0.03) -
                         6.18 * t.mean_gap - 7.62 * t.mean_fill - 0.01 * log_letters * log_heights -
                         1.11 * log_letters * log_misfit;
    return 1 / (1 + std::exp(-logit));
}

}  // namespace vision
