#include "vision/letter_chains.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>

#include "vision/chain_grower.h"
#include "vision/chain_score.h"
#include "vision/found_line.h"
#include "vision/piece_extent.h"

namespace vision {

namespace {

constexpr std::size_t most_chains = 200;
// Chains under it are neither joined nor kept.
constexpr double least_score = 0.002;

float share(std::vector<float> values, double part)
{
    const auto at = static_cast<std::size_t>(part * static_cast<double>(values.size() - 1) + 0.5);
    std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(at),
                     values.end());
    return values[at];
}

// A whole line is worth more than a piece of it that looks a little better.
double worth(const LetterChain& chain)
{
    return chain.score *
           std::sqrt(static_cast<double>(std::min<std::size_t>(chain.members.size(), 16)));
}

std::vector<LetterChain> bestOfOverlapping(std::vector<LetterChain> chains)
{
    std::stable_sort(chains.begin(), chains.end(), [](const LetterChain& a, const LetterChain& b) {
        return worth(a) > worth(b);
    });
    std::vector<LetterChain> kept;
    for (LetterChain& chain : chains) {
        const bool covered = std::any_of(kept.begin(), kept.end(), [&](const LetterChain& better) {
            return commonShare(better.corners, chain.corners) > 0.4;
        });
        if (!covered)
            kept.push_back(std::move(chain));
        if (kept.size() >= most_chains)
            break;
    }
    std::stable_sort(kept.begin(), kept.end(),
                     [](const LetterChain& a, const LetterChain& b) { return a.score > b.score; });
    return kept;
}

// The chains among pieces of one level and polarity.
class LayerChains {
public:
    LayerChains(const std::vector<LetterPiece>& pieces, const ChainOptions& options)
        : pieces_(pieces), grid_(pieces), grower_(pieces_, grid_, options), options_(options)
    {
    }

    std::vector<LetterChain> find() const
    {
        // A pair inside a chain would grow into the same chain again.
        std::vector<std::vector<int>> chained_with(pieces_.size());
        std::vector<LetterChain> chains;
        for (const PiecePair& pair : grower_.likelyPairs()) {
            const auto& known = chained_with[static_cast<std::size_t>(pair.a)];
            if (std::find(known.begin(), known.end(), pair.b) != known.end())
                continue;
            std::vector<int> members = grower_.grow(pair);
            for (std::size_t k = 0; k + 1 < members.size(); ++k) {
                chained_with[static_cast<std::size_t>(members[k])].push_back(members[k + 1]);
                chained_with[static_cast<std::size_t>(members[k + 1])].push_back(members[k]);
            }
            add(std::move(members), chains);
        }
        joinAligned(chains);
        return chains;
    }

private:
    void add(std::vector<int> members, std::vector<LetterChain>& chains) const
    {
        if (static_cast<int>(members.size()) < options_.least_letters)
            return;
        LetterChain chain = describe(std::move(members));
        if (chain.score >= least_score && std::abs(chain.angle_deg) <= options_.max_tilt_deg)
            chains.push_back(std::move(chain));
    }

    LetterChain describe(std::vector<int> members) const
    {
        cv::Point2f u = grower_.directionOf(members);
        if (u.x < 0 || (u.x == 0 && u.y < 0)) {
            u = -u;
            std::reverse(members.begin(), members.end());
        }
        const cv::Point2f n = normalOf(u);
        std::vector<float> tops, bottoms, heights;
        float left = 1e9F, right = -1e9F;
        for (const int i : members) {
            const LetterPiece& piece = pieces_[static_cast<std::size_t>(i)];
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
        chain.score = scoreChain(chain, pieces_, grid_);
        return chain;
    }

    // Where a letter or two are lost a line falls into pieces: those in one straight line with a
    // gap of two letters at most are tried as one. The score decides whether it is kept.
    void joinAligned(std::vector<LetterChain>& chains) const
    {
        std::stable_sort(
            chains.begin(), chains.end(),
            [](const LetterChain& a, const LetterChain& b) { return a.score > b.score; });
        const std::size_t tried = std::min<std::size_t>(chains.size(), 80);
        std::vector<LetterChain> joined;
        for (std::size_t i = 0; i < tried; ++i)
            for (std::size_t j = 0; j < tried; ++j)
                if (i != j && follows(chains[i], chains[j])) {
                    std::vector<int> members = chains[i].members;
                    members.insert(members.end(), chains[j].members.begin(),
                                   chains[j].members.end());
                    add(std::move(members), joined);
                }
        std::move(joined.begin(), joined.end(), std::back_inserter(chains));
    }

    // Whether b goes on where a ends.
    bool follows(const LetterChain& a, const LetterChain& b) const
    {
        const float taller = std::max(a.height_px, b.height_px);
        if (std::min(a.height_px, b.height_px) < 0.75F * taller)
            return false;
        const cv::Point2f end = (a.corners[1] + a.corners[2]) / 2;
        const cv::Point2f start = (b.corners[0] + b.corners[3]) / 2;
        const cv::Point2f far = (b.corners[1] + b.corners[2]) / 2;
        const cv::Point2f back = (a.corners[0] + a.corners[3]) / 2;
        const cv::Point2f u = (far - back) / std::max(1.0, cv::norm(far - back));
        const cv::Point2f n = normalOf(u);
        const float gap = (start - end).dot(u);
        return gap > -0.2F * taller &&
               gap < (static_cast<float>(options_.widest_gap) + 0.8F) * taller &&
               std::abs((end - back).dot(n)) < 0.3F * taller &&
               std::abs((far - start).dot(n)) < 0.3F * taller &&
               std::abs((start - end).dot(n)) < 0.25F * taller;
    }

    const std::vector<LetterPiece>& pieces_;
    PieceGrid grid_;
    ChainGrower grower_;
    const ChainOptions& options_;
};

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
    std::map<std::pair<int, bool>, std::vector<int>> layers;
    for (std::size_t i = 0; i < pieces.size(); ++i)
        layers[{pieces[i].level, pieces[i].light}].push_back(static_cast<int>(i));
    std::vector<LetterChain> chains;
    for (const auto& [key, indices] : layers) {
        std::vector<LetterPiece> own;
        for (const int i : indices)
            own.push_back(pieces[static_cast<std::size_t>(i)]);
        for (LetterChain& chain : LayerChains(own, options).find()) {
            for (int& member : chain.members)
                member = indices[static_cast<std::size_t>(member)];
            chains.push_back(std::move(chain));
        }
    }
    return bestOfOverlapping(std::move(chains));
}

}  // namespace vision
