#include "vision/chain_grower.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "vision/piece_extent.h"

namespace vision {

namespace {

constexpr std::size_t neighbours_tried = 5;  // a piece starts at most so many chains
constexpr std::size_t longest_chain = 60;    // letters; no mark has more in one line

bool within(float a, float b, float ratio)
{
    return a <= ratio * b && b <= ratio * a;
}

bool alike(const LetterPiece& a, const LetterPiece& b)
{
    return within(a.size_px, b.size_px, 2.2F) && within(a.stroke_px, b.stroke_px, 2.2F) &&
           within(a.contrast, b.contrast, 2.5F);
}

float ratioCost(float a, float b)
{
    return std::abs(std::log(a / b));
}

float median(std::vector<float> values)
{
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

// What a chain's next member is held against.
struct ChainShape {
    cv::Point2f along, down;
    float height = 0, middle = 0, contrast = 0, stroke = 0;
};

}  // namespace

bool ChainGrower::pairUp(int a, int b, PiecePair& pair) const
{
    const LetterPiece &p = piece(a), &q = piece(b);
    if (!alike(p, q))
        return false;
    const cv::Point2f step = q.centre - p.centre;
    const float distance = std::hypot(step.x, step.y);
    if (distance < 2)
        return false;
    const cv::Point2f u = step / distance, n = normalOf(u);
    const Extent hp = extentAlong(p, n), hq = extentAlong(q, n);
    const float taller = std::max(hp.length(), hq.length());
    const float lower = std::min(hp.length(), hq.length());
    if (lower < 0.5F * taller)
        return false;
    const Extent wp = extentAlong(p, u), wq = extentAlong(q, u);
    const float gap = wq.low - wp.high;
    if (gap > static_cast<float>(options_.widest_gap) * taller || gap < -0.35F * taller)
        return false;
    if (std::max(wp.length(), wq.length()) > 2.5F * taller)
        return false;
    pair = {a, b,
            std::max(0.0F, gap / taller) + 2 * (1 - lower / taller) +
                ratioCost(p.stroke_px, q.stroke_px) + ratioCost(p.contrast, q.contrast)};
    return true;
}

std::vector<PiecePair> ChainGrower::likelyPairs() const
{
    const auto cheaper = [](const PiecePair& p, const PiecePair& q) { return p.cost < q.cost; };
    std::set<std::pair<int, int>> known;
    std::vector<PiecePair> pairs;
    for (int i = 0; i < static_cast<int>(pieces_.size()); ++i) {
        std::vector<PiecePair> own;
        PiecePair pair;
        for (const int j : grid_.near(piece(i).centre, 3.2F * piece(i).size_px))
            if (j != i && pairUp(i, j, pair))
                own.push_back(pair);
        std::stable_sort(own.begin(), own.end(), cheaper);
        if (own.size() > neighbours_tried)
            own.resize(neighbours_tried);
        for (const PiecePair& likely : own)
            if (known.insert(std::minmax(likely.a, likely.b)).second)
                pairs.push_back(likely);
    }
    std::stable_sort(pairs.begin(), pairs.end(), cheaper);
    return pairs;
}

std::vector<int> ChainGrower::grow(const PiecePair& seed) const
{
    std::vector<int> chain{seed.a, seed.b};
    bool grew = true;
    while (grew && chain.size() < longest_chain) {
        grew = false;
        for (int end = 0; end < 2; ++end) {
            if (const int next = nextAfter(chain); next >= 0) {
                chain.push_back(next);
                grew = true;
            }
            std::reverse(chain.begin(), chain.end());
        }
    }
    return chain;
}

cv::Point2f ChainGrower::directionOf(const std::vector<int>& chain) const
{
    const cv::Point2f span = piece(chain.back()).centre - piece(chain.front()).centre;
    cv::Point2f mean{};
    for (const int i : chain)
        mean += piece(i).centre;
    mean /= static_cast<float>(chain.size());
    float xx = 0, xy = 0, yy = 0;
    for (const int i : chain) {
        const cv::Point2f d = piece(i).centre - mean;
        xx += d.x * d.x;
        xy += d.x * d.y;
        yy += d.y * d.y;
    }
    const float angle = 0.5F * std::atan2(2 * xy, xx - yy);
    const cv::Point2f u(std::cos(angle), std::sin(angle));
    return u.dot(span) >= 0 ? u : -u;
}

// The piece that goes on the chain best beyond its last member, or -1.
int ChainGrower::nextAfter(const std::vector<int>& chain) const
{
    ChainShape shape;
    shape.along = directionOf(chain);
    shape.down = normalOf(shape.along);
    std::vector<float> heights, middles, contrasts, strokes;
    for (const int i : chain) {
        const Extent e = extentAlong(piece(i), shape.down);
        heights.push_back(e.length());
        middles.push_back(e.middle());
        contrasts.push_back(piece(i).contrast);
        strokes.push_back(piece(i).stroke_px);
    }
    shape.height = median(heights);
    shape.middle = median(middles);
    shape.contrast = median(contrasts);
    shape.stroke = median(strokes);
    // A short chain's direction is loose.
    const float slack = (chain.size() < 4 ? 0.42F : 0.33F) * shape.height;
    const float widest_gap = static_cast<float>(options_.widest_gap) * shape.height;
    const LetterPiece& last = piece(chain.back());
    const float end = extentAlong(last, shape.along).high;
    int best = -1;
    float best_cost = 1e9F;
    for (const int i : grid_.near(last.centre, widest_gap + 2 * shape.height + last.size_px)) {
        const LetterPiece& next = piece(i);
        if (!alike(last, next) || next.centre.dot(shape.along) <= last.centre.dot(shape.along) + 1)
            continue;
        const Extent w = extentAlong(next, shape.along);
        const float gap = w.low - end;
        if (gap > widest_gap || gap < -0.35F * shape.height || w.length() > 2.5F * shape.height)
            continue;
        const Extent h = extentAlong(next, shape.down);
        const float offset = std::abs(h.middle() - shape.middle);
        if (!within(h.length(), shape.height, 1.9F) || offset > slack)
            continue;
        const float cost = std::max(0.0F, gap / shape.height) +
                           2 * ratioCost(h.length(), shape.height) + 1.5F * offset / shape.height +
                           0.7F * ratioCost(next.contrast, shape.contrast) +
                           0.5F * ratioCost(next.stroke_px, shape.stroke);
        if (cost >= best_cost || std::find(chain.begin(), chain.end(), i) != chain.end())
            continue;
        best = i;
        best_cost = cost;
    }
    return best;
}

}  // namespace vision
