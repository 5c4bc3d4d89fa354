#include "tests/support/synthetic/fittings.h"

#include <algorithm>
#include <cmath>

#include "tests/support/synthetic/noise.h"

namespace synthetic {
namespace {

// Distance inside a rectangle with rounded corners; below 0 outside.
float insideBy(float dx, float dy, float half_w, float half_h, float corner)
{
    const float qx = std::abs(dx) - (half_w - corner), qy = std::abs(dy) - (half_h - corner);
    const float outside = std::hypot(std::max(qx, 0.0F), std::max(qy, 0.0F));
    return corner - outside - std::min(std::max(qx, qy), 0.0F);
}

float patternAt(const PieceOptions& piece, float u, float v)
{
    const auto stripe = [](float t) {
        const float off = std::abs(t - std::floor(t) - 0.5F);
        return smoothStep(0.20F, 0.16F, off);
    };
    switch (piece.pattern) {
        case Pattern::None:
            return 0;
        case Pattern::Stripes:
            return stripe(v);
        case Pattern::Checks:
            return 0.5F * (stripe(u) + stripe(v));
        case Pattern::Dots: {
            const float shift = static_cast<int>(std::floor(v)) % 2 == 0 ? 0.0F : 0.5F;
            const float du = u + shift - std::floor(u + shift) - 0.5F,
                        dv = v - std::floor(v) - 0.5F;
            return smoothStep(0.27F, 0.22F, std::hypot(du, dv));
        }
    }
    return 0;
}

}  // namespace

void fixPlate(Surface& surface, const Layout& layout, const PlateOptions& plate, cv::RNG& random)
{
    const cv::Size size = surface.height.size();
    const cv::Point2d middle =
        mapped(layout.plane_from_surface.inv(), {plate.along_px, plate.across_px});
    const auto half_w = static_cast<float>(plate.size_px.width / 2 * finer),
               half_h = static_cast<float>(plate.size_px.height / 2 * finer);
    const float corner = 0.22F * half_h, thick = static_cast<float>(5 * finer);
    const auto wear = static_cast<float>(plate.wear);
    const cv::Mat scratches = smoothNoise(size, 1.6, random, 30),
                  dents = smoothNoise(size, 40, random), tarnish = smoothNoise(size, 55, random),
                  spots = smoothNoise(size, 6, random);
    const cv::Vec3f metal = linearColour(plate.colour_bgr), dull = linearColour({46, 66, 74});
    surface.height.forEach<float>([&](float& height, const int* at) {
        const int y = at[0], x = at[1];
        const float dx = static_cast<float>(x - middle.x), dy = static_cast<float>(y - middle.y);
        const float inside = insideBy(dx, dy, half_w, half_h, corner);
        cv::Vec3f& albedo = surface.albedo.at<cv::Vec3f>(y, x);
        if (inside < 0) {  // dirt and shade along its rim
            albedo *= 1 - 0.5F * smoothStep(-14, 0, inside);
            return;
        }
        const float rivet = std::hypot(std::abs(dx) - (half_w - 1.1F * corner - 8), dy) / 14;
        const float rim = smoothStep(0, 7, inside);
        height = thick * (0.4F + 0.6F * rim) +
                 wear * (0.10F * scratches.at<float>(y, x) + 0.9F * dents.at<float>(y, x));
        if (rivet < 1)
            height += 8 * std::sqrt(1 - rivet * rivet);
        const float dark =
            std::clamp(wear * (0.35F + 0.3F * tarnish.at<float>(y, x) +
                               0.25F * smoothStep(0.8F, 2.0F, spots.at<float>(y, x))) +
                           0.5F * smoothStep(8, 0, inside) +
                           0.5F * smoothStep(1.6F, 1, rivet) * smoothStep(0.6F, 1, rivet),
                       0.0F, 0.9F);
        albedo =
            (metal * (1 - dark) + dull * dark) * (1 + 0.06F * wear * scratches.at<float>(y, x));
        surface.gloss.at<float>(y, x) = 1.6F * (1 - 0.8F * dark);
        surface.take.at<float>(y, x) = 0.9F;
    });
}

void printPattern(Surface& surface, const PieceOptions& piece, cv::RNG& random)
{
    const cv::Size size = surface.height.size();
    const cv::Mat ragged = smoothNoise(size, 3, random), worn = smoothNoise(size, 50, random);
    const auto repeat = static_cast<float>(piece.pattern_px * finer);
    const cv::Vec3f dyed = linearColour(piece.pattern_bgr);
    surface.albedo.forEach<cv::Vec3f>([&](cv::Vec3f& albedo, const int* at) {
        const int y = at[0], x = at[1];
        const float wobble = 0.012F * ragged.at<float>(y, x);
        const float ink = patternAt(piece, static_cast<float>(x) / repeat + wobble,
                                    static_cast<float>(y) / repeat + wobble);
        const float share = 0.8F * ink * (0.55F + 0.45F * surface.take.at<float>(y, x)) *
                            std::clamp(0.85F + 0.15F * worn.at<float>(y, x), 0.0F, 1.0F);
        albedo = albedo * (1 - share) + dyed * share;
    });
}

}  // namespace synthetic
