#include "tests/support/synthetic/leather.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "tests/support/synthetic/noise.h"

namespace synthetic {
namespace {

struct Cell {
    float valley;  // 0 in the valley between two cells, growing to their middles
    float own;     // 0 to 1, the cell's own value
};

// Cells around scattered points (Worley, "A cellular texture basis function", 1996): the distance
// to the second nearest point less that to the nearest.
Cell cellAt(float x, float y, std::uint32_t seed)
{
    const int cx = static_cast<int>(std::floor(x)), cy = static_cast<int>(std::floor(y));
    float nearest = 9, second = 9, own = 0;
    for (int j = cy - 1; j <= cy + 1; ++j)
        for (int i = cx - 1; i <= cx + 1; ++i) {
            const float px = static_cast<float>(i) + hashed(i, j, seed);
            const float py = static_cast<float>(j) + hashed(i, j, seed + 1);
            const float distance = std::hypot(px - x, py - y);
            if (distance < nearest) {
                second = nearest;
                nearest = distance;
                own = hashed(i, j, seed + 2);
            } else if (distance < second) {
                second = distance;
            }
        }
    return {second - nearest, own};
}

}  // namespace

Surface leather(cv::Size size, const LeatherOptions& options)
{
    if (options.grain_px < 2)
        throw std::invalid_argument("LeatherOptions::grain_px must be at least 2");
    cv::RNG random(options.seed);
    const cv::Mat bend_x = smoothNoise(size, options.grain_px * 5, random);
    const cv::Mat bend_y = smoothNoise(size, options.grain_px * 5, random);
    const cv::Mat mottle = smoothNoise(size, options.grain_px * 9, random, 1.6);
    const cv::Mat worn = smoothNoise(size, options.grain_px * 45, random, 2.5);
    const cv::Mat fine = smoothNoise(size, 1.4, random);
    const auto grain = static_cast<float>(options.grain_px);
    const auto uneven = static_cast<float>(options.unevenness);
    const cv::Vec3f colour = linearColour(options.colour_bgr);

    Surface surface = blankSurface(size);
    surface.gloss = 0.8F;
    surface.height.forEach<float>([&](float& height, const int* at) {
        const int y = at[0], x = at[1];
        const float u = (static_cast<float>(x) + 2 * bend_x.at<float>(y, x)) / (1.25F * grain);
        const float v = (static_cast<float>(y) + 2 * bend_y.at<float>(y, x)) / grain;
        const Cell cell = cellAt(u, v, options.seed + 3);
        const Cell small = cellAt(2.3F * u + 0.4F, 2.3F * v, options.seed + 9);
        const float dome = smoothStep(0, 0.42F, cell.valley);
        const float wear = smoothStep(-0.4F, 1.8F, worn.at<float>(y, x));
        height = grain * (0.20F * dome * (1 - 0.5F * wear) + 0.05F * small.valley +
                          0.05F * (cell.own - 0.5F) + 0.012F * fine.at<float>(y, x));
        surface.take.at<float>(y, x) = 0.55F + 0.45F * dome;
        const float shade = (0.78F + 0.22F * dome) *
                            std::max(0.2F, 1 +
                                               uneven * (0.07F * mottle.at<float>(y, x) +
                                                         0.24F * wear + 0.14F * (cell.own - 0.5F)) +
                                               0.03F * fine.at<float>(y, x));
        cv::Vec3f& albedo = surface.albedo.at<cv::Vec3f>(y, x);
        albedo = colour * shade;
        albedo[2] *= 1 + 0.06F * uneven * wear;  // worn leather lightens towards red
    });
    return surface;
}

}  // namespace synthetic
