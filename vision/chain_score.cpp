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

const LogisticModel& chainModel()
{
    static const LogisticModel model{-14.15,
                                     {{"log letters", -0.512},
                                      {"log contrast", 0.307},
                                      {"separation", 2.73},
                                      {"log clutter", -1.16},
                                      {"log height spread", -0.738},
                                      {"log misfit", 0.077},
                                      {"contrast spread", 3.47},
                                      {"stroke spread", 4.42},
                                      {"stroke share", -5.51},
                                      {"width spread", -2.78},
                                      {"narrow share", -1.27},
                                      {"log gap spread", 0.029},
                                      {"mean gap", -4.05},
                                      {"mean fill", -6.09},
                                      {"letters x height", -0.196},
                                      {"letters x misfit", -1.3}}};
    return model;
}

std::vector<double> termsOf(const ChainTraits& t)
{
    const double letters = std::log(std::min(t.letters, 14.0));
    const double heights = std::log(t.height_spread + 0.02);
    const double misfit = std::log(t.edge_misfit + 0.01);
    return {letters,
            std::log(std::max(t.contrast, 0.01)),
            std::min(t.separation, 5.0),
            std::log(t.clutter + 0.05),
            heights,
            misfit,
            t.contrast_spread,
            t.stroke_spread,
            t.stroke_share,
            t.width_spread,
            t.narrow_share,
            std::log(t.gap_spread + 0.03),
            t.mean_gap,
            t.mean_fill,
            letters * heights,
            letters * misfit};
}

double scoreChain(const LetterChain& chain, const std::vector<LetterPiece>& pieces,
                  const PieceGrid& grid)
{
    return chainModel().probability(termsOf(traitsOf(chain, pieces, grid)));
}

}  // namespace vision
