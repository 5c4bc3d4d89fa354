#include "tests/support/synthetic_stamp.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

#include "tests/support/synthetic/leather.h"
#include "tests/support/synthetic/lighting.h"
#include "tests/support/synthetic/noise.h"
#include "tests/support/synthetic/surface.h"
#include "tests/support/synthetic/table_top.h"
#include "tests/support/synthetic/weave.h"

namespace synthetic {
namespace {

constexpr double kFiner = 1.5;  // the piece is drawn so much finer than the photo shows it

// Where the piece lies. Its plane has the photo's scale, its origin in the photo's middle and x
// along the strap; the drawn surface is a window of that plane, kFiner times as fine.
struct Layout {
    cv::Matx33d photo_from_plane;
    cv::Matx33d plane_from_surface;
    cv::Size surface;

    cv::Matx33d photoFromSurface() const { return photo_from_plane * plane_from_surface; }
};

cv::Point2d mapped(const cv::Matx33d& to_from, const cv::Point2d& point)
{
    const cv::Vec3d p = to_from * cv::Vec3d(point.x, point.y, 1);
    return {p[0] / p[2], p[1] / p[2]};
}

// A pinhole camera over a plane that is tilted under it and turned in itself.
cv::Matx33d photoFromPlane(const SceneOptions& options)
{
    const double turn = options.piece.turn_deg * CV_PI / 180;
    const double pitch = options.pitch_deg * CV_PI / 180, yaw = options.yaw_deg * CV_PI / 180;
    const cv::Matx33d about_z(std::cos(turn), -std::sin(turn), 0, std::sin(turn), std::cos(turn), 0,
                              0, 0, 1);
    const cv::Matx33d about_x(1, 0, 0, 0, std::cos(pitch), -std::sin(pitch), 0, std::sin(pitch),
                              std::cos(pitch));
    const cv::Matx33d about_y(std::cos(yaw), 0, std::sin(yaw), 0, 1, 0, -std::sin(yaw), 0,
                              std::cos(yaw));
    const cv::Matx33d r = about_y * about_x * about_z;
    const double distance = 1.3 * std::max(options.size_px.width, options.size_px.height);
    const cv::Matx33d seen(distance * r(0, 0), distance * r(0, 1), 0, distance * r(1, 0),
                           distance * r(1, 1), 0, r(2, 0), r(2, 1), distance);
    const cv::Matx33d to_middle(1, 0, options.size_px.width / 2.0, 0, 1,
                                options.size_px.height / 2.0, 0, 0, 1);
    return to_middle * seen;
}

Layout layOut(const SceneOptions& options)
{
    Layout layout;
    layout.photo_from_plane = photoFromPlane(options);
    const cv::Matx33d plane_from_photo = layout.photo_from_plane.inv();
    std::vector<cv::Point2f> corners;
    for (const cv::Point2d corner : {cv::Point2d(0, 0), cv::Point2d(options.size_px.width, 0),
                                     cv::Point2d(0, options.size_px.height),
                                     cv::Point2d(options.size_px.width, options.size_px.height)})
        corners.push_back(mapped(plane_from_photo, corner));
    cv::Rect window = cv::boundingRect(corners);
    window = cv::Rect(window.x - 8, window.y - 8, window.width + 16, window.height + 16);
    if (options.piece.width_px > 0) {
        const int half = cvCeil(options.piece.width_px / 2) + 12;
        const cv::Rect strap(window.x, cvRound(options.piece.offset_px) - half, window.width,
                             2 * half);
        window = strap;
    }
    layout.plane_from_surface = {1 / kFiner, 0,          static_cast<double>(window.x),
                                 0,          1 / kFiner, static_cast<double>(window.y),
                                 0,          0,          1};
    layout.surface = {cvRound(window.width * kFiner), cvRound(window.height * kFiner)};
    return layout;
}

Surface pieceSurface(cv::Size size, const PieceOptions& piece, std::uint32_t seed)
{
    const double thread = piece.thread_px * kFiner;
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

// CV_32FC1, 1 on the piece, 0 beside it; the edges of a strap are not quite straight.
cv::Mat pieceMask(const Layout& layout, const PieceOptions& piece, cv::RNG& random)
{
    cv::Mat mask(layout.surface, CV_32FC1, 1.0F);
    if (piece.width_px <= 0)
        return mask;
    const cv::Mat wobble =
        smoothNoise({layout.surface.width, 2}, 60, random) * 1.6 +
        smoothNoise({layout.surface.width, 2}, piece.thread_px * kFiner, random) * 0.5;
    const double half = piece.width_px / 2 * kFiner, middle = layout.surface.height / 2.0;
    mask.forEach<float>([&](float& value, const int* at) {
        const double from_middle = at[0] - middle;
        const double edge = half + wobble.at<float>(from_middle < 0 ? 0 : 1, at[1]);
        value = static_cast<float>(std::clamp(edge - std::abs(from_middle), 0.0, 1.0));
    });
    return mask;
}

// A strap is round at its edges.
void roundEdges(Surface& surface, const PieceOptions& piece)
{
    if (piece.width_px <= 0)
        return;
    const double half = piece.width_px / 2 * kFiner, middle = surface.height.rows / 2.0;
    const double rim = 2.2 * piece.thread_px * kFiner;
    surface.height.forEach<float>([&](float& height, const int* at) {
        const double inside = (half - std::abs(at[0] - middle)) / rim;
        if (inside < 1) {
            const double fall = 1 - std::max(0.0, inside);
            height -= static_cast<float>(0.45 * rim * fall * fall);
        }
    });
}

cv::Matx23d surfaceFromCover(const Layout& layout, const StampOptions& stamp, const Typeset& face)
{
    const cv::Matx33d surface_from_plane = layout.plane_from_surface.inv();
    const cv::Point2d centre = mapped(surface_from_plane, {stamp.along_px, stamp.across_px});
    const double turn = stamp.turn_deg * CV_PI / 180;
    const double c = std::cos(turn), s = std::sin(turn);
    const cv::Point2d middle = (face.bounds.tl() + face.bounds.br()) / 2;
    return {c, -s, centre.x - c * middle.x + s * middle.y,
            s, c,  centre.y - s * middle.x - c * middle.y};
}

Quad quadOf(const cv::Rect2d& box, const cv::Matx33d& photo_from_cover)
{
    const cv::Point2d corners[4] = {
        box.tl(), {box.x + box.width, box.y}, box.br(), {box.x, box.y + box.height}};
    Quad quad;
    for (std::size_t i = 0; i < 4; ++i)
        quad[i] = mapped(photo_from_cover, corners[i]);
    return quad;
}

StampTruth truthOf(const Typeset& face, const cv::Matx33d& photo_from_cover)
{
    StampTruth truth;
    truth.outline = quadOf(face.bounds, photo_from_cover);
    for (const SetLine& line : face.lines) {
        LineTruth told{line.text, quadOf(line.box, photo_from_cover), {}};
        for (const SetLetter& letter : line.letters)
            told.letters.push_back({letter.text, quadOf(letter.box, photo_from_cover)});
        truth.lines.push_back(told);
    }
    const Quad& corners = truth.outline;
    const cv::Point2f right = corners[1] + corners[2] - corners[0] - corners[3];
    truth.up_deg = std::fmod(std::atan2(right.y, right.x) * 180 / CV_PI + 360, 360);
    return truth;
}

cv::Mat toPhoto(const cv::Mat& drawn, const Layout& layout, cv::Size photo)
{
    cv::Mat seen;
    cv::warpPerspective(drawn, seen, layout.photoFromSurface(), photo, cv::INTER_LINEAR,
                        cv::BORDER_CONSTANT);
    return seen;
}

LightOptions lightOn(const SceneOptions& options, double turned_deg)
{
    return {options.light.from_deg - turned_deg, options.light.elevation_deg, options.light.ambient,
            1};
}

// Light falls off towards the side away from the lamp, and in slow patches.
void unevenLight(cv::Mat& radiance, const SceneLight& light, cv::RNG& random)
{
    const double turn = light.from_deg * CV_PI / 180;
    const cv::Point2d to_lamp(std::cos(turn), std::sin(turn));
    const double reach = std::hypot(radiance.cols, radiance.rows) / 2;
    const cv::Mat patches = smoothNoise(radiance.size(), reach * 0.55, random);
    radiance.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int* at) {
        const double towards = ((at[1] - radiance.cols / 2.0) * to_lamp.x +
                                (at[0] - radiance.rows / 2.0) * to_lamp.y) /
                               reach;
        const double amount =
            1 + light.unevenness * (0.75 * towards - 0.12 + 0.16 * patches.at<float>(at[0], at[1]));
        value *= static_cast<float>(std::max(0.08, amount));
    });
}

// The table around the piece, with the piece's shadow on it.
cv::Mat tableAround(const cv::Mat& mask, const SceneOptions& options)
{
    const Surface table = tableTop(options.size_px, options.piece.table, options.seed + 5);
    cv::Mat radiance = lit(table, lightOn(options, 0));
    const double turn = options.light.from_deg * CV_PI / 180;
    const double length =
        7 / std::tan(std::clamp(options.light.elevation_deg, 12.0, 80.0) * CV_PI / 180);
    cv::Mat shadow, contact;
    cv::warpAffine(mask, shadow,
                   cv::Matx23d(1, 0, -length * std::cos(turn), 0, 1, -length * std::sin(turn)),
                   mask.size(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
    cv::GaussianBlur(shadow, shadow, {}, 2 + length * 0.25);
    cv::GaussianBlur(mask, contact, {}, 11);
    radiance.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int* at) {
        value *= (1 - 0.62F * shadow.at<float>(at[0], at[1])) *
                 (1 - 0.45F * contact.at<float>(at[0], at[1]));
    });
    return radiance;
}

void check(const SceneOptions& options)
{
    if (options.size_px.width < 32 || options.size_px.height < 32)
        throw std::invalid_argument("SceneOptions::size_px must be at least 32 x 32");
    if (std::abs(options.pitch_deg) > 40 || std::abs(options.yaw_deg) > 40)
        throw std::invalid_argument("SceneOptions::pitch_deg and yaw_deg must be -40 to 40");
    if (options.piece.width_px < 0)
        throw std::invalid_argument("PieceOptions::width_px must not be negative");
}

}  // namespace

DrawnPhoto drawPhoto(const SceneOptions& options)
{
    check(options);
    cv::RNG random(options.seed);
    const Layout layout = layOut(options);
    Surface surface = pieceSurface(layout.surface, options.piece, options.seed + 1);
    roundEdges(surface, options.piece);

    DrawnPhoto photo;
    cv::Mat ink = cv::Mat::zeros(layout.surface, CV_32FC1);
    std::uint32_t stamp_seed = options.seed * 31 + 100;
    for (const StampOptions& stamp : options.stamps) {
        TypesetOptions text = stamp.text;
        text.letter_px *= kFiner;
        InkOptions pad = stamp.ink;
        pad.smudge_px *= kFiner;
        pad.second_px *= kFiner;
        const Typeset face = typeset(text, ++stamp_seed);
        const cv::Matx23d placed = surfaceFromCover(layout, stamp, face);
        const cv::Mat density = pressInk(surface, face, placed, text.letter_px, pad, ++stamp_seed);
        dye(surface, density, pad.colour_bgr);
        cv::max(ink, density, ink);
        const cv::Matx33d surface_from_cover(placed(0, 0), placed(0, 1), placed(0, 2), placed(1, 0),
                                             placed(1, 1), placed(1, 2), 0, 0, 1);
        photo.stamps.push_back(truthOf(face, layout.photoFromSurface() * surface_from_cover));
    }

    const cv::Mat drawn = lit(surface, lightOn(options, options.piece.turn_deg));
    const cv::Mat mask = pieceMask(layout, options.piece, random);
    const cv::Mat piece_seen = toPhoto(drawn, layout, options.size_px);
    const cv::Mat mask_seen = toPhoto(mask, layout, options.size_px);
    cv::Mat scene = piece_seen;
    if (options.piece.width_px > 0) {
        scene = tableAround(mask_seen, options);
        scene.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int* at) {
            const float there = mask_seen.at<float>(at[0], at[1]);
            value = value * (1 - there) + piece_seen.at<cv::Vec3f>(at[0], at[1]) * there;
        });
    }
    unevenLight(scene, options.light, random);
    photo.pixels = photographed(scene, options.camera, options.seed + 7);
    toPhoto(ink.mul(mask), layout, options.size_px).convertTo(photo.ink, CV_8U, 255);
    return photo;
}

}  // namespace synthetic
