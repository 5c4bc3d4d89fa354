#include "tests/support/synthetic/weave.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

#include "tests/support/synthetic/noise.h"

namespace synthetic {
namespace {

constexpr float pi = 3.14159265F;

// What the two systems of threads are like. "Along" threads run in x, "cross" threads in y.
struct Loom {
    float along_pitch, cross_pitch;  // pixels between threads of each system
    float along_lift, cross_lift;    // how far one system lies above the other, in threads
    int over, under;                 // an along thread goes over so many cross threads, then under
    int step;                        // and its neighbour the same, so many cross threads later
};

Loom loomFor(const WeaveOptions& options)
{
    const auto thread = static_cast<float>(options.thread_px);
    switch (options.kind) {
        case WeaveKind::Twill:
            return {thread, thread * 0.95F, 0.08F, 0, 2, 1, 1};
        case WeaveKind::Webbing:
            return {thread, thread * 1.75F, 0.32F, 0, 1, 1, 1};
        case WeaveKind::Plain:
            break;
    }
    return {thread, thread * 1.08F, 0, 0, 1, 1, 1};
}

// +1 where along thread `along` lies over cross thread `cross`, else -1.
float overOrUnder(const Loom& loom, int along, int cross)
{
    const int period = loom.over + loom.under;
    const int at = ((cross + along * loom.step) % period + period) % period;
    return at < loom.over ? 1.0F : -1.0F;
}

// A thread where one looks at it.
struct Strand {
    float height = 0;  // in threads
    float shade = 1;   // brightness against the cloth's colour
    float warmth = 0;  // -1 to 1
    float edge = 0;    // 0 at its middle, 1 at its edge
};

class Weaver {
public:
    explicit Weaver(const WeaveOptions& options)
        : options_(options),
          loom_(loomFor(options)),
          uneven_(static_cast<float>(options.unevenness))
    {
    }

    // u counts cross threads (in x), v along threads (in y).
    Strand along(float u, float v) const
    {
        const float middle = std::floor(v) + 0.5F;
        const int which = static_cast<int>(std::floor(v));
        const float before = std::floor(u - 0.5F);
        const int cross = static_cast<int>(before);
        const float bend = wave(overOrUnder(loom_, which, cross),
                                overOrUnder(loom_, which, cross + 1), u - 0.5F - before);
        return strand(v - middle, u * loom_.cross_pitch / loom_.along_pitch, which, bend,
                      loom_.along_lift, 11);
    }

    Strand cross(float u, float v) const
    {
        const float middle = std::floor(u) + 0.5F;
        const int which = static_cast<int>(std::floor(u));
        const float before = std::floor(v - 0.5F);
        const int along = static_cast<int>(before);
        const float bend = -wave(overOrUnder(loom_, along, which),
                                 overOrUnder(loom_, along + 1, which), v - 0.5F - before);
        return strand(u - middle, v * loom_.along_pitch / loom_.cross_pitch, which, bend,
                      loom_.cross_lift, 57);
    }

    const Loom& loom() const { return loom_; }

private:
    static float wave(float from, float to, float t)
    {
        return from + (to - from) * (0.5F - 0.5F * std::cos(pi * t));
    }

    // across: -0.5 to 0.5 of its own width; length: in its own widths.
    Strand strand(float across, float length, int which, float bend, float lift,
                  std::uint32_t system) const
    {
        const std::uint32_t seed = options_.seed * 131 + system;
        const float thick =
            1 + uneven_ * (0.30F * (hashed(which, 1, seed) - 0.5F) +
                           0.34F * (hashedAlong(length / 9, which, seed + 1) - 0.5F));
        Strand strand;
        strand.edge = std::min(1.0F, std::abs(across) * 2 / thick);
        const float crown = std::sqrt(std::max(0.0F, 1 - strand.edge * strand.edge));
        const float twist =
            std::sin(2 * pi * (length * 0.85F + across * 1.1F + hashed(which, 2, seed)));
        strand.height = 0.42F * thick * crown + 0.24F * bend + lift + 0.035F * twist;
        strand.shade = 1 +
                       uneven_ * (0.22F * (hashed(which, 3, seed) - 0.5F) +
                                  0.26F * (hashedAlong(length / 5, which, seed + 2) - 0.5F) +
                                  0.16F * (hashedAlong(length * 1.3F, which, seed + 3) - 0.5F)) +
                       0.05F * twist;
        strand.warmth = uneven_ * (2 * hashed(which, 4, seed) - 1);
        return strand;
    }

    WeaveOptions options_;
    Loom loom_;
    float uneven_;
};

// How far the threads wander, in pixels: slow bends of the whole cloth and each thread's own.
struct Wander {
    cv::Mat x, y;
};

Wander wanderOf(cv::Size size, const WeaveOptions& options, cv::RNG& random)
{
    const double pitch = options.thread_px;
    const double uneven = options.unevenness;
    Wander wander;
    wander.x = smoothNoise(size, pitch * 40, random) * (uneven * 1.3 * pitch) +
               smoothNoise(size, pitch * 3, random) * (uneven * 0.11 * pitch);
    wander.y = smoothNoise(size, pitch * 40, random) * (uneven * 1.3 * pitch) +
               smoothNoise(size, pitch * 3, random) * (uneven * 0.11 * pitch);
    return wander;
}

}  // namespace

Surface weave(cv::Size size, const WeaveOptions& options)
{
    if (options.thread_px < 2)
        throw std::invalid_argument("WeaveOptions::thread_px must be at least 2");
    if (options.unevenness < 0 || options.unevenness > 1)
        throw std::invalid_argument("WeaveOptions::unevenness must be 0 to 1");
    cv::RNG random(options.seed);
    const Wander wander = wanderOf(size, options, random);
    const cv::Mat fibres = smoothNoise(size, 1.3, random);
    const cv::Mat dirt = smoothNoise(size, options.thread_px * 22, random);
    const Weaver weaver(options);
    const cv::Vec3f colour = linearColour(options.colour_bgr);
    const auto pitch = static_cast<float>(options.thread_px);

    Surface cloth = blankSurface(size);
    const auto weaveRows = [&](const cv::Range& rows) {
        for (int y = rows.start; y < rows.end; ++y)
            for (int x = 0; x < size.width; ++x) {
                const float u =
                    (static_cast<float>(x) + wander.x.at<float>(y, x)) / weaver.loom().cross_pitch;
                const float v =
                    (static_cast<float>(y) + wander.y.at<float>(y, x)) / weaver.loom().along_pitch;
                const Strand along = weaver.along(u, v), cross = weaver.cross(u, v);
                const Strand& top = along.height >= cross.height ? along : cross;
                const float fibre = fibres.at<float>(y, x);
                cloth.height.at<float>(y, x) = pitch * (top.height + 0.02F * fibre);
                cloth.take.at<float>(y, x) = smoothStep(0.08F, 0.58F, top.height);
                // Between threads light is lost before it comes out again.
                const float depth = 0.55F + 0.45F * smoothStep(-0.15F, 0.42F, top.height);
                const float shade = std::max(
                    0.1F, top.shade * depth * (1 + 0.05F * fibre + 0.05F * dirt.at<float>(y, x)));
                cv::Vec3f& albedo = cloth.albedo.at<cv::Vec3f>(y, x);
                albedo = colour * shade;
                albedo[0] *= 1 - 0.05F * top.warmth;
                albedo[2] *= 1 + 0.04F * top.warmth;
            }
    };
    cv::parallel_for_(cv::Range(0, size.height), weaveRows);
    return cloth;
}

}  // namespace synthetic
