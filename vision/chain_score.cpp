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

}  // namespace

ChainTraits traitsOf(const LetterChain& chain, const std::vector<LetterPiece>& pieces)
{
    const double angle = chain.angle_deg * CV_PI / 180;
    const cv::Point2f u(static_cast<float>(std::cos(angle)), static_cast<float>(std::sin(angle)));
    const cv::Point2f n(-u.y, u.x);
    std::vector<double> heights, widths, tops, bottoms, contrasts, log_contrasts, strokes,
        log_strokes, gaps, fills;
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
        log_contrasts.push_back(std::log(piece.contrast));
        strokes.push_back(piece.stroke_px);
        log_strokes.push_back(std::log(piece.stroke_px));
        fills.push_back(piece.fill);
    }
    ChainTraits traits;
    const double height = std::max(1.0, mean(heights));
    traits.letters = static_cast<double>(chain.members.size());
    traits.contrast = median(contrasts);
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

double scoreChain(const LetterChain& chain, const std::vector<LetterPiece>& pieces)
{
    const ChainTraits t = traitsOf(chain, pieces);
    const double logit = -3.0 + 1.2 * std::min(t.letters, 8.0) + 3.0 * std::min(t.contrast, 1.0) -
                         6.0 * t.height_spread - 8.0 * t.edge_misfit - 3.0 * t.contrast_spread -
                         2.0 * t.stroke_spread - 3.0 * t.narrow_share -
                         8.0 * std::max(0.0, t.mean_fill - 0.75) - 2.0 * std::max(0.0, t.mean_gap);
    return 1 / (1 + std::exp(-logit));
}

}  // namespace vision
