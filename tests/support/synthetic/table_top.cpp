#include "tests/support/synthetic/table_top.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "tests/support/synthetic/noise.h"
#include "tests/support/synthetic/weave.h"

namespace synthetic {
namespace {

// Boards along x: rings cut lengthwise, pores as dark dashes, dark joints.
Surface planks(cv::Size size, cv::RNG& random)
{
    const cv::Mat rings_bend = smoothNoise(size, 60, random, 7);
    const cv::Mat streaks = smoothNoise(size, 2.0, random, 40);
    const cv::Mat pores = smoothNoise(size, 1.5, random, 14);
    const cv::Mat tone = smoothNoise(size, 90, random, 4);
    const auto board = static_cast<float>(size.height) * 0.42F;
    const float first_joint = board * random.uniform(0.2F, 0.8F);
    const cv::Vec3f brown = linearColour({62, 92, 128});

    Surface wood = blankSurface(size);
    wood.gloss = 0.35F;
    wood.height.forEach<float>([&](float& height, const int* at) {
        const int y = at[0], x = at[1];
        const float down = (static_cast<float>(y) - first_joint) / board;
        const int which = static_cast<int>(std::floor(down));
        const float to_joint = std::abs(down - std::round(down)) * board;
        const float gap = smoothStep(4, 1, to_joint);
        const float across = static_cast<float>(y) / 9 + 2.4F * rings_bend.at<float>(y, x) +
                             40 * hashed(which, 0, 5);
        const float ring = std::pow(0.5F + 0.5F * std::sin(across), 3.0F);
        const float pore = smoothStep(1.1F, 2.2F, pores.at<float>(y, x));
        height = 0.25F * streaks.at<float>(y, x) - 0.8F * pore - 5 * gap;
        const float shade = (0.85F + 0.35F * hashed(which, 1, 5)) * (1 - 0.24F * ring) *
                            (1 + 0.07F * streaks.at<float>(y, x) + 0.08F * tone.at<float>(y, x)) *
                            (1 - 0.35F * pore) * (1 - 0.75F * gap);
        wood.albedo.at<cv::Vec3f>(y, x) = brown * std::max(0.05F, shade);
    });
    return wood;
}

Surface board(cv::Size size, cv::RNG& random)
{
    const cv::Mat fibres = smoothNoise(size, 1.6, random), tone = smoothNoise(size, 120, random);
    const cv::Vec3f grey = linearColour({150, 156, 158});
    Surface paper = blankSurface(size);
    paper.height = fibres * 0.25;
    paper.albedo.forEach<cv::Vec3f>([&](cv::Vec3f& albedo, const int* at) {
        albedo = grey * (1 + 0.05F * fibres.at<float>(at[0], at[1]) +
                         0.04F * tone.at<float>(at[0], at[1]));
    });
    return paper;
}

}  // namespace

Surface tableTop(cv::Size size, Table kind, std::uint32_t seed)
{
    cv::RNG random(seed);
    switch (kind) {
        case Table::Wood:
            return planks(size, random);
        case Table::Cloth:
            return weave(size, {WeaveKind::Plain, {66, 60, 56}, 3.2, 0.5, seed});
        case Table::Board:
            return board(size, random);
    }
    throw std::invalid_argument("unknown table");
}

}  // namespace synthetic
