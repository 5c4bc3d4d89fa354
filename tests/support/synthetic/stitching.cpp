#include "tests/support/synthetic/stitching.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "tests/support/synthetic/noise.h"

namespace synthetic {
namespace {

using AtPixel = std::function<void(int x, int y, float along, float beside)>;

// Calls for each pixel near a segment, with its place along (0 at `from`) and beside it.
void nearSegment(cv::Size size, cv::Point2d from, cv::Point2d to, double reach, const AtPixel& call)
{
    const cv::Point2d way = to - from;
    const double length = std::max(1e-6, std::hypot(way.x, way.y));
    const cv::Point2d along = way / length;
    const int left = std::max(0, cvFloor(std::min(from.x, to.x) - reach));
    const int right = std::min(size.width - 1, cvCeil(std::max(from.x, to.x) + reach));
    const int top = std::max(0, cvFloor(std::min(from.y, to.y) - reach));
    const int bottom = std::min(size.height - 1, cvCeil(std::max(from.y, to.y) + reach));
    for (int y = top; y <= bottom; ++y)
        for (int x = left; x <= right; ++x) {
            const cv::Point2d d = cv::Point2d(x, y) - from;
            const double beside = std::abs(d.x * along.y - d.y * along.x);
            if (beside <= reach)
                call(x, y, static_cast<float>(d.dot(along)), static_cast<float>(beside));
        }
}

// The row of stitches draws the cloth together.
void drawIn(Surface& surface, cv::Point2d from, cv::Point2d to, const StitchOptions& options)
{
    const auto reach = static_cast<float>(3.2 * options.width_px);
    const auto depth = static_cast<float>(0.55 * options.width_px);
    nearSegment(surface.height.size(), from, to, reach, [&](int x, int y, float, float beside) {
        const float sag = 1 - smoothStep(0, reach, beside);
        surface.height.at<float>(y, x) -= depth * sag;
        surface.albedo.at<cv::Vec3f>(y, x) *= 1 - 0.12F * sag;
    });
}

void layStitch(Surface& surface, cv::Point2d from, cv::Point2d to, const StitchOptions& options,
               float shade, float ground)
{
    const auto half = static_cast<float>(options.width_px / 2);
    const auto length = static_cast<float>(std::hypot(to.x - from.x, to.y - from.y));
    const cv::Vec3f colour = linearColour(options.colour_bgr) * shade;
    const auto stitch = [&](int x, int y, float along, float beside) {
        const float beyond = std::max({0.0F, -along, along - length});
        const float away = std::hypot(beyond, beside);
        // The holes at both ends, into which the thread goes down.
        const float hole =
            smoothStep(1.5F * half, 0.5F * half,
                       std::hypot(std::min(std::abs(along), std::abs(along - length)), beside));
        surface.albedo.at<cv::Vec3f>(y, x) *= 1 - 0.55F * hole;
        if (away > half)
            return;
        const float bow = std::sin(3.14159F * std::clamp(along / length, 0.0F, 1.0F));
        const float crown = std::sqrt(std::max(0.0F, 1 - away * away / (half * half)));
        const float twist = std::sin(along * 6.2832F / (3.2F * half) + 2.2F * beside / half);
        surface.height.at<float>(y, x) =
            ground + half * (0.2F + 0.9F * bow) * crown + 0.12F * half * twist;
        surface.albedo.at<cv::Vec3f>(y, x) =
            colour * ((0.62F + 0.38F * crown) * (0.55F + 0.45F * bow) * (1 + 0.12F * twist));
    };
    nearSegment(surface.height.size(), from, to, 2 * half, stitch);
}

}  // namespace

void sew(Surface& surface, cv::Point2d from, cv::Point2d to, const StitchOptions& options,
         cv::RNG& random)
{
    drawIn(surface, from, to, options);
    const cv::Point2d way = to - from;
    const double length = std::hypot(way.x, way.y), step = options.length_px + options.gap_px;
    const cv::Point2d along = way / length, beside(-along.y, along.x);
    for (double at = random.uniform(0.0, step); at + options.length_px < length; at += step) {
        const auto shaken = [&](double place) {
            return from + along * (place + random.gaussian(0.05 * options.length_px)) +
                   beside * random.gaussian(0.11 * options.width_px);
        };
        const cv::Point2d begin = shaken(at), end = shaken(at + options.length_px);
        const cv::Point middle = (begin + end) / 2;
        if (!cv::Rect({}, surface.height.size()).contains(middle))
            continue;
        layStitch(surface, begin, end, options, 1 + static_cast<float>(random.gaussian(0.07)),
                  surface.height.at<float>(middle));
    }
}

void setEyelet(Surface& surface, cv::Point2d centre, double radius_px, cv::RNG& random)
{
    const cv::Vec3f brass = linearColour({70, 140, 172}), dark = linearColour({22, 24, 26});
    const auto outer = static_cast<float>(radius_px), inner = outer * 0.52F;
    const float tarnish_at = random.uniform(0.0F, 6.28F);
    const cv::Point near(cvRound(centre.x), cvRound(centre.y));
    if (!cv::Rect({}, surface.height.size()).contains(near))
        return;
    const float ground = surface.height.at<float>(near);
    const cv::Point2d left(centre.x - radius_px, centre.y), right(centre.x + radius_px, centre.y);
    nearSegment(
        surface.height.size(), left, right, radius_px * 1.6, [&](int x, int y, float along, float) {
            const float dx = along - outer, dy = static_cast<float>(y - centre.y);
            const float r = std::hypot(dx, dy);
            if (r > 1.5F * outer)
                return;
            float& height = surface.height.at<float>(y, x);
            cv::Vec3f& albedo = surface.albedo.at<cv::Vec3f>(y, x);
            if (r > outer) {  // the cloth is pressed down around it
                height -= 0.12F * outer * smoothStep(1.5F * outer, outer, r);
                albedo *= 1 - 0.3F * smoothStep(1.2F * outer, outer, r);
            } else if (r > inner) {
                const float t = (r - inner) / (outer - inner) * 2 - 1;
                const float turn = std::atan2(dy, dx) - tarnish_at;
                height = ground + 0.22F * outer * std::sqrt(std::max(0.0F, 1 - t * t));
                albedo = brass * (0.55F + 0.2F * std::sin(turn) + 0.1F * std::sin(3 * turn));
                surface.gloss.at<float>(y, x) = 3.2F;
                surface.take.at<float>(y, x) = 0;
            } else {
                height = ground - 3;
                albedo = dark;
                surface.take.at<float>(y, x) = 0;
            }
        });
}

cv::Mat coverWithHem(Surface& surface, const Surface& layer, double edge_x, double thickness_px,
                     cv::RNG& random)
{
    const cv::Size size = surface.height.size();
    const cv::Mat wobble = smoothNoise({2, size.height}, 90, random) * 2.2 +
                           smoothNoise({2, size.height}, 12, random) * 0.5;
    const auto thick = static_cast<float>(thickness_px);
    cv::Mat in_sight(size, CV_32FC1, 1.0F);
    for (int y = 0; y < size.height; ++y) {
        const float edge = static_cast<float>(edge_x) + wobble.at<float>(y, 0);
        const int first = std::max(0, cvCeil(edge - 3 * thick));
        for (int x = first; x < size.width; ++x) {
            const float inside = static_cast<float>(x) - edge;
            if (inside < 0) {  // the shade under the folded edge
                surface.albedo.at<cv::Vec3f>(y, x) *= 1 - 0.45F * smoothStep(-3 * thick, 0, inside);
                continue;
            }
            const float round = std::min(1.0F, inside / (1.6F * thick));
            surface.height.at<float>(y, x) =
                layer.height.at<float>(y, x) + thick * std::sqrt(round * (2 - round));
            surface.albedo.at<cv::Vec3f>(y, x) = layer.albedo.at<cv::Vec3f>(y, x);
            surface.take.at<float>(y, x) = layer.take.at<float>(y, x);
            surface.gloss.at<float>(y, x) = layer.gloss.at<float>(y, x);
            in_sight.at<float>(y, x) = 0;
        }
    }
    return in_sight;
}

}  // namespace synthetic
