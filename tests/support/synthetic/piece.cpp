#include "tests/support/synthetic/piece.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "tests/support/synthetic/fittings.h"
#include "tests/support/synthetic/leather.h"
#include "tests/support/synthetic/noise.h"
#include "tests/support/synthetic/stitching.h"
#include "tests/support/synthetic/wear.h"
#include "tests/support/synthetic/weave.h"

namespace synthetic {
namespace {

Surface bareSurface(cv::Size size, const PieceOptions& piece, std::uint32_t seed)
{
    const double thread = piece.thread_px * finer;
    switch (piece.material) {
        case Material::Webbing:
            return weave(size,
                         {WeaveKind::Webbing, piece.colour_bgr, thread, piece.unevenness, seed});
        case Material::Canvas:
            return weave(size,
                         {WeaveKind::Plain, piece.colour_bgr, thread, piece.unevenness, seed});
        case Material::Twill:
            return weave(size,
                         {WeaveKind::Twill, piece.colour_bgr, thread, piece.unevenness, seed});
        case Material::Leather:
            return leather(size, {piece.colour_bgr, thread, piece.unevenness, seed});
    }
    throw std::invalid_argument("unknown material");
}

// A strap is round at its edges.
void roundEdges(Surface& surface, const PieceOptions& piece)
{
    if (piece.width_px <= 0)
        return;
    const double half = piece.width_px / 2 * finer, middle = surface.height.rows / 2.0;
    const double rim = 2.2 * piece.thread_px * finer;
    surface.height.forEach<float>([&](float& height, const int* at) {
        const double inside = (half - std::abs(at[0] - middle)) / rim;
        if (inside < 1) {
            const double fall = 1 - std::max(0.0, inside);
            height -= static_cast<float>(0.45 * rim * fall * fall);
        }
    });
}

cv::Point2d onSurface(const Layout& layout, double along_px, double across_px)
{
    return mapped(layout.plane_from_surface.inv(), {along_px, across_px});
}

cv::Vec3b threadColour(const PieceOptions& piece)
{
    const double lighter = piece.material == Material::Leather ? 1.9 : 1.12;
    return {cv::saturate_cast<uchar>(piece.colour_bgr[0] * lighter),
            cv::saturate_cast<uchar>(piece.colour_bgr[1] * lighter),
            cv::saturate_cast<uchar>(piece.colour_bgr[2] * lighter)};
}

StitchOptions stitchesFor(const PieceOptions& piece)
{
    return {threadColour(piece), 13 * finer, 3.5 * finer, 3.4 * finer};
}

cv::Mat hem(Surface& surface, const Layout& layout, const SceneOptions& options, cv::RNG& random)
{
    const double edge_x = onSurface(layout, *options.details.hem_px, 0).x;
    Surface layer = bareSurface(layout.surface, options.piece, options.seed + 17);
    roundEdges(layer, options.piece);
    layer.albedo *= 0.97;
    const cv::Mat in_sight =
        coverWithHem(surface, layer, edge_x, 1.1 * options.piece.thread_px * finer, random);
    const double bottom = layout.surface.height;
    for (const double inside_px : {11.0, 21.0}) {
        const double x = edge_x + inside_px * finer;
        sew(surface, {x, 0}, {x + random.gaussian(3), bottom}, stitchesFor(options.piece), random);
    }
    return in_sight;
}

void sewEdges(Surface& surface, const Layout& layout, const PieceOptions& piece, cv::RNG& random)
{
    for (const double side : {-1.0, 1.0}) {
        const double y = layout.surface.height / 2.0 + side * (piece.width_px / 2 - 16) * finer;
        sew(surface, {0, y}, {static_cast<double>(layout.surface.width), y + random.gaussian(2)},
            stitchesFor(piece), random);
    }
}

}  // namespace

Surface makePiece(const Layout& layout, const SceneOptions& options)
{
    Surface surface = bareSurface(layout.surface, options.piece, options.seed + 1);
    roundEdges(surface, options.piece);
    cv::RNG random(options.seed + 2);
    letLieUneven(surface, options.details.waviness, finer, random);
    cv::RNG random_print(options.seed + 10);
    if (options.piece.pattern != Pattern::None)
        printPattern(surface, options.piece, random_print);
    for (const PlateOptions& plate : options.details.plates)
        fixPlate(surface, layout, plate, random_print);
    return surface;
}

cv::Mat pieceMask(const Layout& layout, const PieceOptions& piece, std::uint32_t seed)
{
    cv::Mat mask(layout.surface, CV_32FC1, 1.0F);
    if (piece.width_px <= 0)
        return mask;
    cv::RNG random(seed);
    const cv::Size strip(layout.surface.width, 2);
    const double thread = piece.thread_px * finer;
    const bool leather = piece.material == Material::Leather;
    cv::Mat edges = smoothNoise(strip, 220, random) * (leather ? 0.8 : 2.2) +
                    smoothNoise(strip, thread, random) * (leather ? 0.25 : 0.45);
    if (piece.material == Material::Webbing)  // the weft turns back in small loops
        edges.forEach<float>([&](float& value, const int* at) {
            value += static_cast<float>(0.13 * thread *
                                        std::cos(at[1] * 2 * CV_PI / (3.5 * thread) + at[0]));
        });
    const double half = piece.width_px / 2 * finer, middle = layout.surface.height / 2.0;
    mask.forEach<float>([&](float& value, const int* at) {
        const double from_middle = at[0] - middle;
        const double edge = half + edges.at<float>(from_middle < 0 ? 0 : 1, at[1]);
        value = static_cast<float>(std::clamp(edge - std::abs(from_middle), 0.0, 1.0));
    });
    return mask;
}

cv::Mat creasePiece(Surface& surface, const Layout& layout, const SceneOptions& options)
{
    cv::RNG random(options.seed + 3);
    cv::Mat stays(layout.surface, CV_32FC1, 1.0F);
    for (const CreaseOptions& crease : options.details.creases)
        stays =
            stays.mul(fold(surface,
                           {onSurface(layout, crease.along_px, crease.across_px), crease.turn_deg,
                            crease.height_px * finer, 10 * finer, crease.length_px * finer},
                           random));
    return stays;
}

cv::Mat finishPiece(Surface& surface, const Layout& layout, const SceneOptions& options)
{
    cv::RNG random(options.seed + 4);
    const DetailOptions& details = options.details;
    for (const StainOptions& blotch : details.stains)
        stain(surface,
              {onSurface(layout, blotch.along_px, blotch.across_px), blotch.radius_px * finer,
               blotch.strength, blotch.colour_bgr},
              random);
    cv::Mat in_sight(layout.surface, CV_32FC1, 1.0F);
    if (details.hem_px)
        in_sight = hem(surface, layout, options, random);
    if (details.edge_stitching && options.piece.width_px > 0)
        sewEdges(surface, layout, options.piece, random);
    for (const cv::Point2d& eyelet : details.eyelets_px)
        setEyelet(surface, onSurface(layout, eyelet.x, eyelet.y), 21 * finer, random);
    const double fuzz = options.piece.material == Material::Leather ? 0 : details.fuzz;
    raiseFuzz(surface, options.piece.colour_bgr, fuzz, finer, random);
    return in_sight;
}

}  // namespace synthetic
