#include "tests/support/synthetic/stamp_ink.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>
#include <vector>

#include <opencv2/imgproc.hpp>

#include "tests/support/synthetic/noise.h"

namespace synthetic {
namespace {

void requireShare(const char* field, double value)
{
    if (!(value >= 0 && value <= 1))
        throw std::invalid_argument(std::string("InkOptions::") + field + " must be 0 to 1");
}

// The part of the surface that the stamp can touch, with room for smudges.
cv::Rect touched(const Typeset& face, const cv::Matx23d& surface_from_cover, cv::Size surface,
                 double room_px)
{
    const auto w = static_cast<float>(face.cover.cols), h = static_cast<float>(face.cover.rows);
    const std::vector<cv::Point2f> corners = {{0, 0}, {w, 0}, {w, h}, {0, h}};
    std::vector<cv::Point2f> placed;
    cv::transform(corners, placed, surface_from_cover);
    cv::Rect area = cv::boundingRect(placed);
    const int room = cvCeil(room_px) + 2;
    area = cv::Rect(area.x - room, area.y - room, area.width + 2 * room, area.height + 2 * room);
    return area & cv::Rect({}, surface);
}

// Pressure of the pad, 0 to 1: heavy here, light there.
cv::Mat pressure(cv::Size size, double letter_px, double patchiness, cv::RNG& random)
{
    const cv::Mat wide = smoothNoise(size, letter_px * 2.2, random);
    const cv::Mat close = smoothNoise(size, letter_px * 0.5, random);
    cv::Mat pressed = 1.0 - patchiness * (0.42 + 0.40 * wide + 0.22 * close);
    cv::min(pressed, 1.0, pressed);
    cv::max(pressed, 0.0, pressed);
    return pressed;
}

// The face as it touched: edges follow the threads and the pressure.
cv::Mat contact(const cv::Mat& cover, const cv::Mat& pressed, cv::RNG& random)
{
    cv::Mat soft;
    cv::GaussianBlur(cover, soft, {}, 1.1);
    const cv::Mat ragged = smoothNoise(cover.size(), 2.4, random);
    cv::Mat touch(cover.size(), CV_32FC1);
    touch.forEach<float>([&](float& out, const int* at) {
        const float spread = 0.16F * (pressed.at<float>(at[0], at[1]) - 0.7F);
        const float value = soft.at<float>(at[0], at[1]);
        out = value < 0.01F ? 0
                            : smoothStep(0.30F, 0.70F,
                                         value + 0.10F * ragged.at<float>(at[0], at[1]) + spread);
    });
    return touch;
}

struct Impression {
    cv::Mat touch, pressed, take;
};

// Ink taken up by threads: tops first, more where the pad pressed, spreading as it soaks in.
cv::Mat takenUp(const Impression& impression, const InkOptions& options, double letter_px,
                cv::RNG& random)
{
    const auto soaking = static_cast<float>(options.soaking);
    const auto patchy = static_cast<float>(options.patchiness);
    cv::Mat spread, inside;
    cv::GaussianBlur(impression.touch, spread, {}, 0.6 + 0.075 * letter_px * options.soaking);
    cv::GaussianBlur(impression.touch, inside, {}, 0.10 * letter_px);
    const cv::Mat specks = smoothNoise(impression.touch.size(), 2.8, random);
    cv::Mat ink(impression.touch.size(), CV_32FC1);
    ink.forEach<float>([&](float& out, const int* at) {
        const int y = at[0], x = at[1];
        const float touch = impression.touch.at<float>(y, x);
        const float wet = std::max(touch, 0.8F * soaking * spread.at<float>(y, x));
        if (wet < 0.003F) {
            out = 0;
            return;
        }
        const float press = impression.pressed.at<float>(y, x);
        const float reach = 0.75F - 0.7F * press;  // how high a thread must stand to be touched
        const float top = smoothStep(reach - 0.15F, reach + 0.45F, impression.take.at<float>(y, x));
        const float squeezed = 1.08F - 0.16F * inside.at<float>(y, x);  // to the letters' rims
        const float speck = 1 - patchy * 0.75F * smoothStep(0.5F, 1.5F, specks.at<float>(y, x));
        out = 1.2F * wet * (0.62F * soaking + (1 - 0.62F * soaking) * top) * squeezed * speck *
              (0.25F + 0.75F * press);
    });
    return ink;
}

// Wear takes ink off the tops of the threads; washing takes some everywhere.
void fade(cv::Mat& ink, const cv::Mat& take, double fading, double letter_px, cv::RNG& random)
{
    const cv::Mat uneven = smoothNoise(ink.size(), letter_px * 1.6, random);
    const auto all_over = static_cast<float>(fading);
    const float spread = 0.44F * (1 - all_over);  // what is gone altogether is gone everywhere
    ink.forEach<float>([&](float& value, const int* at) {
        const float here =
            std::clamp(all_over * (1 + spread * uneven.at<float>(at[0], at[1])), 0.0F, 1.0F);
        value *= (1 - here) * (1 - 0.45F * here * take.at<float>(at[0], at[1]));
    });
}

cv::Mat shifted(const cv::Mat& ink, double dx, double dy)
{
    cv::Mat moved;
    cv::warpAffine(ink, moved, cv::Matx23d(1, 0, dx, 0, 1, dy), ink.size(), cv::INTER_LINEAR,
                   cv::BORDER_CONSTANT);
    return moved;
}

void smudge(cv::Mat& ink, double smudge_px, double along_deg)
{
    const double turn = along_deg * CV_PI / 180;
    const int steps = std::max(3, cvRound(smudge_px / 1.5));
    cv::Mat wiped = cv::Mat::zeros(ink.size(), CV_32FC1);
    double weights = 0;
    for (int i = 1; i <= steps; ++i) {
        const double reach = smudge_px * i / steps, weight = 1 - 0.75 * i / steps;
        wiped += weight * shifted(ink, reach * std::cos(turn), reach * std::sin(turn));
        weights += weight;
    }
    const cv::Mat kept = 0.82 * ink, smeared = 1.15 / weights * wiped;
    cv::max(kept, smeared, ink);
}

void speckle(cv::Mat& ink, double amount, double letter_px, cv::RNG& random)
{
    const cv::Mat spots = smoothNoise(ink.size(), std::max(2.0, letter_px * 0.09), random);
    const auto low = static_cast<float>(1.8 - 1.5 * amount);
    ink.forEach<float>([&](float& value, const int* at) {
        value *= 1 - smoothStep(low, low + 0.35F, spots.at<float>(at[0], at[1]));
    });
}

void rub(cv::Mat& ink, double share, double letter_px, cv::RNG& random)
{
    const cv::Mat bare = smoothNoise(ink.size(), letter_px * 1.1, random) +
                         0.3 * smoothNoise(ink.size(), letter_px * 0.15, random);
    std::vector<float> values(bare.begin<float>(), bare.end<float>());
    const auto at =
        std::min(values.size() - 1,
                 static_cast<std::size_t>((1 - share) * static_cast<double>(values.size())));
    std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(at),
                     values.end());
    const float level = values[at];
    ink.forEach<float>([&](float& value, const int* place) {
        value *= 1 - smoothStep(level - 0.12F, level + 0.12F, bare.at<float>(place[0], place[1]));
    });
}

void checkInk(const InkOptions& options)
{
    requireShare("fading", options.fading);
    requireShare("soaking", options.soaking);
    requireShare("patchiness", options.patchiness);
    requireShare("speckle", options.speckle);
    requireShare("rubbed", options.rubbed);
    if (options.smudge_px < 0 || options.second_px < 0)
        throw std::invalid_argument("InkOptions::smudge_px and second_px must not be negative");
}

}  // namespace

cv::Mat pressInk(const Surface& surface, const Typeset& face, const cv::Matx23d& surface_from_cover,
                 double letter_px, const InkOptions& options, std::uint32_t seed)
{
    checkInk(options);
    cv::Mat density = cv::Mat::zeros(surface.height.size(), CV_32FC1);
    const cv::Rect area = touched(face, surface_from_cover, density.size(),
                                  options.smudge_px + options.second_px + letter_px * 0.5);
    if (area.empty())
        return density;
    cv::RNG random(seed);
    cv::Matx23d area_from_cover = surface_from_cover;
    area_from_cover(0, 2) -= area.x;
    area_from_cover(1, 2) -= area.y;
    cv::Mat cover;
    cv::warpAffine(face.cover, cover, area_from_cover, area.size(), cv::INTER_LINEAR,
                   cv::BORDER_CONSTANT);
    Impression impression;
    impression.take = surface.take(area);
    impression.pressed = pressure(area.size(), letter_px, options.patchiness, random);
    impression.touch = contact(cover, impression.pressed, random);
    cv::Mat ink = takenUp(impression, options, letter_px, random);

    const double along_deg =
        std::atan2(surface_from_cover(1, 0), surface_from_cover(0, 0)) * 180 / CV_PI;
    if (options.second_px > 0) {
        const double turn = (along_deg + random.uniform(20.0, 70.0)) * CV_PI / 180;
        const cv::Mat again =
            shifted(ink, options.second_px * std::cos(turn), options.second_px * std::sin(turn));
        ink = 1.0 - (1.0 - ink).mul(1.0 - 0.5 * again);
    }
    if (options.smudge_px > 0)
        smudge(ink, options.smudge_px, along_deg + random.uniform(-35.0, 35.0));
    fade(ink, impression.take, options.fading, letter_px, random);
    cv::RNG bare(seed + 7001);  // its own, so that neither moves what else chance decided
    if (options.speckle > 0)
        speckle(ink, options.speckle, letter_px, bare);
    if (options.rubbed > 0)
        rub(ink, options.rubbed, letter_px, bare);
    cv::min(ink, 1.0, ink);
    ink.copyTo(density(area));
    return density;
}

cv::Mat placedFace(const Typeset& face, const cv::Matx23d& surface_from_cover, cv::Size surface)
{
    cv::Mat placed;
    cv::warpAffine(face.cover, placed, surface_from_cover, surface, cv::INTER_LINEAR,
                   cv::BORDER_CONSTANT);
    return placed;
}

void engrave(Surface& surface, const cv::Mat& placed_face, double depth_px)
{
    cv::Mat dent;
    cv::GaussianBlur(placed_face, dent, {}, 1.2);
    surface.height -= depth_px * dent;
    surface.albedo.forEach<cv::Vec3f>([&](cv::Vec3f& albedo, const int* at) {
        albedo *= 1 - 0.35F * dent.at<float>(at[0], at[1]);
        surface.gloss.at<float>(at[0], at[1]) *= 1 - 0.6F * dent.at<float>(at[0], at[1]);
    });
}

void dye(Surface& surface, const cv::Mat& density, const cv::Vec3b& colour_bgr)
{
    const cv::Vec3f ink = linearColour(colour_bgr);
    surface.albedo.forEach<cv::Vec3f>([&](cv::Vec3f& albedo, const int* at) {
        const float share = 0.94F * density.at<float>(at[0], at[1]);
        albedo = albedo * (1 - share) + ink * share;
    });
}

}  // namespace synthetic
