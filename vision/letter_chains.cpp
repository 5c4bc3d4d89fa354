#include "vision/letter_chains.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

#include "vision/chain_score.h"
#include "vision/piece_grid.h"

namespace vision {

namespace {

struct Extent {
    float low = 0, high = 0;
    float length() const { return high - low; }
    float middle() const { return (low + high) / 2; }
};

Extent extentAlong(const LetterPiece& piece, cv::Point2f direction)
{
    Extent extent{1e9F, -1e9F};
    for (const cv::Point2f& p : piece.hull) {
        const float t = p.dot(direction);
        extent.low = std::min(extent.low, t);
        extent.high = std::max(extent.high, t);
    }
    extent.high += 1;  // a pixel has a width
    return extent;
}

cv::Point2f normalOf(cv::Point2f direction)
{
    return {-direction.y, direction.x};
}

struct Pair {
    int a = 0, b = 0;
    float cost = 0;  // small for neighbours that look like letters of one word
};

bool alike(const LetterPiece& a, const LetterPiece& b)
{
    const auto within = [](float p, float q, float ratio) {
        return p <= ratio * q && q <= ratio * p;
    };
    return a.light == b.light && a.level == b.level && within(a.size_px, b.size_px, 2.2F) &&
           within(a.stroke_px, b.stroke_px, 2.2F) && within(a.contrast, b.contrast, 2.5F);
}

// One growing chain over shared pieces.
class Grower {
public:
    Grower(const std::vector<LetterPiece>& pieces, const PieceGrid& grid,
           const ChainOptions& options)
        : pieces_(pieces), grid_(grid), options_(options)
    {
    }

    // Cost of two pieces as neighbours; nothing when they cannot be.
    std::optional<Pair> pairUp(int a, int b) const
    {
        const LetterPiece &p = piece(a), &q = piece(b);
        if (!alike(p, q))
            return std::nullopt;
        const cv::Point2f step = q.centre - p.centre;
        const float distance = std::hypot(step.x, step.y);
        if (distance < 2)
            return std::nullopt;
        const cv::Point2f u = step / distance, n = normalOf(u);
        const Extent hp = extentAlong(p, n), hq = extentAlong(q, n);
        const float taller = std::max(hp.length(), hq.length());
        const float lower = std::min(hp.length(), hq.length());
        if (lower < 0.5F * taller)
            return std::nullopt;
        const Extent wp = extentAlong(p, u), wq = extentAlong(q, u);
        const float gap = wq.low - wp.high;
        if (gap > static_cast<float>(options_.widest_gap) * taller || gap < -0.35F * taller)
            return std::nullopt;
        if (std::max(wp.length(), wq.length()) > 2.5F * taller)
            return std::nullopt;
        const float stroke = std::abs(std::log(p.stroke_px / q.stroke_px));
        const float contrast = std::abs(std::log(p.contrast / q.contrast));
        const float cost =
            std::max(0.0F, gap / taller) + 2 * (1 - lower / taller) + stroke + contrast;
        return Pair{a, b, cost};
    }

    std::vector<int> grow(const Pair& seed) const
    {
        std::vector<int> chain{seed.a, seed.b};
        bool grew = true;
        while (grew && chain.size() < 60) {
            grew = false;
            if (const int next = nextAfter(chain); next >= 0) {
                chain.push_back(next);
                grew = true;
            }
            std::reverse(chain.begin(), chain.end());
            if (const int next = nextAfter(chain); next >= 0) {
                chain.push_back(next);
                grew = true;
            }
            std::reverse(chain.begin(), chain.end());
        }
        return chain;
    }

    // Direction from the first to the last member, by least squares on the centres.
    cv::Point2f directionOf(const std::vector<int>& chain) const
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

    const LetterPiece& piece(int i) const { return pieces_[static_cast<std::size_t>(i)]; }

private:
    static float median(std::vector<float> values)
    {
        const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
        std::nth_element(values.begin(), middle, values.end());
        return *middle;
    }

    // The nearest piece that goes on the chain beyond its last member, or -1.
    int nextAfter(const std::vector<int>& chain) const
    {
        const cv::Point2f u = directionOf(chain), n = normalOf(u);
        std::vector<float> heights, middles;
        for (const int i : chain) {
            const Extent e = extentAlong(piece(i), n);
            heights.push_back(e.length());
            middles.push_back(e.middle());
        }
        const float height = median(heights);
        const float middle = median(middles);
        // A short chain's direction is loose: its line is followed from its end only.
        const float slack = chain.size() < 4 ? 0.42F : 0.33F;
        const LetterPiece& last = piece(chain.back());
        const float end = extentAlong(last, u).high;
        const float reach =
            height * (static_cast<float>(options_.widest_gap) + 2.0F) + last.size_px;
        int best = -1;
        float best_gap = 1e9F;
        for (const int i : grid_.near(last.centre, reach)) {
            const LetterPiece& next = piece(i);
            if (!alike(last, next) || next.centre.dot(u) <= last.centre.dot(u) + 1)
                continue;
            const Extent h = extentAlong(next, n), w = extentAlong(next, u);
            const float gap = w.low - end;
            if (gap > static_cast<float>(options_.widest_gap) * height || gap < -0.35F * height ||
                gap >= best_gap)
                continue;
            if (h.length() < 0.5F * height || h.length() > 1.7F * height ||
                w.length() > 2.5F * height)
                continue;
            if (std::abs(h.middle() - middle) > slack * height)
                continue;
            if (std::find(chain.begin(), chain.end(), i) != chain.end())
                continue;
            best = i;
            best_gap = gap;
        }
        return best;
    }

    const std::vector<LetterPiece>& pieces_;
    const PieceGrid& grid_;
    const ChainOptions& options_;
};

float share(std::vector<float> values, double part)
{
    const auto at = static_cast<std::size_t>(part * static_cast<double>(values.size() - 1) + 0.5);
    std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(at),
                     values.end());
    return values[at];
}

LetterChain describe(std::vector<int> members, const std::vector<LetterPiece>& pieces,
                     const Grower& grower, const PieceGrid& grid)
{
    cv::Point2f u = grower.directionOf(members);
    if (u.x < 0 || (u.x == 0 && u.y < 0)) {
        u = -u;
        std::reverse(members.begin(), members.end());
    }
    const cv::Point2f n = normalOf(u);
    std::vector<float> tops, bottoms, heights;
    float left = 1e9F, right = -1e9F;
    for (const int i : members) {
        const LetterPiece& piece = pieces[static_cast<std::size_t>(i)];
        const Extent h = extentAlong(piece, n), w = extentAlong(piece, u);
        tops.push_back(h.low);
        bottoms.push_back(h.high);
        heights.push_back(h.length());
        left = std::min(left, w.low);
        right = std::max(right, w.high);
    }
    LetterChain chain;
    chain.height_px = share(heights, 0.6);
    // Nearly all of the letters stand between these; a lone tail or accent may stick out.
    const float top = share(tops, 0.15), bottom = share(bottoms, 0.85);
    const auto at = [&](float along, float across) { return along * u + across * n; };
    chain.corners = {at(left, top), at(right, top), at(right, bottom), at(left, bottom)};
    chain.angle_deg = std::atan2(u.y, u.x) * 180.0F / static_cast<float>(CV_PI);
    chain.members = std::move(members);
    chain.score = scoreChain(chain, pieces, grid);
    return chain;
}

double overlapShare(const LetterChain& a, const LetterChain& b)
{
    std::vector<cv::Point2f> common;
    const std::vector<cv::Point2f> p(a.corners.begin(), a.corners.end());
    const std::vector<cv::Point2f> q(b.corners.begin(), b.corners.end());
    const double area = cv::intersectConvexConvex(p, q, common);
    const double smaller = std::min(cv::contourArea(p), cv::contourArea(q));
    return smaller > 0 ? area / smaller : 0;
}

std::vector<LetterChain> bestOfOverlapping(std::vector<LetterChain> chains)
{
    std::stable_sort(chains.begin(), chains.end(),
                     [](const LetterChain& a, const LetterChain& b) { return a.score > b.score; });
    std::vector<LetterChain> kept;
    for (LetterChain& chain : chains) {
        const bool covered = std::any_of(kept.begin(), kept.end(), [&](const LetterChain& better) {
            return overlapShare(better, chain) > 0.4;
        });
        if (!covered)
            kept.push_back(std::move(chain));
        if (kept.size() >= 200)
            break;
    }
    return kept;
}

void checkOptions(const ChainOptions& options)
{
    if (!(options.widest_gap > 0))
        throw std::invalid_argument("ChainOptions.widest_gap must be positive");
    if (!(options.max_tilt_deg >= 0 && options.max_tilt_deg <= 90))
        throw std::invalid_argument("ChainOptions.max_tilt_deg must be from 0 to 90");
    if (options.least_letters < 2)
        throw std::invalid_argument("ChainOptions.least_letters must be at least 2");
}

}  // namespace

std::vector<LetterChain> chainLetters(const std::vector<LetterPiece>& pieces,
                                      const ChainOptions& options)
{
    checkOptions(options);
    const PieceGrid grid(pieces);
    const Grower grower(pieces, grid, options);
    std::vector<Pair> pairs;
    for (int i = 0; i < static_cast<int>(pieces.size()); ++i) {
        const LetterPiece& piece = pieces[static_cast<std::size_t>(i)];
        for (const int j : grid.near(piece.centre, 3.2F * piece.size_px))
            if (j > i)
                if (const auto pair = grower.pairUp(i, j))
                    pairs.push_back(*pair);
    }
    std::stable_sort(pairs.begin(), pairs.end(),
                     [](const Pair& a, const Pair& b) { return a.cost < b.cost; });
    // A pair inside a chain would grow into the same chain again.
    std::vector<std::vector<int>> chained_with(pieces.size());
    std::vector<LetterChain> chains;
    for (const Pair& pair : pairs) {
        const auto& known = chained_with[static_cast<std::size_t>(pair.a)];
        if (std::find(known.begin(), known.end(), pair.b) != known.end())
            continue;
        std::vector<int> members = grower.grow(pair);
        if (static_cast<int>(members.size()) < options.least_letters)
            continue;
        for (std::size_t k = 0; k + 1 < members.size(); ++k) {
            chained_with[static_cast<std::size_t>(members[k])].push_back(members[k + 1]);
            chained_with[static_cast<std::size_t>(members[k + 1])].push_back(members[k]);
        }
        LetterChain chain = describe(std::move(members), pieces, grower, grid);
        if (std::abs(chain.angle_deg) <= options.max_tilt_deg)
            chains.push_back(std::move(chain));
    }
    return bestOfOverlapping(std::move(chains));
}

}  // namespace vision
