#include "tests/support/synthetic_stamp.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

#include <opencv2/imgproc.hpp>

#include "tests/support/synthetic/layout.h"
#include "tests/support/synthetic/lighting.h"
#include "tests/support/synthetic/piece.h"
#include "tests/support/synthetic/scene_light.h"

namespace synthetic {
namespace {

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

// One stamp pressed on the piece: its ink, and the truth about it.
struct Pressed {
    cv::Mat density;
    cv::Vec3b colour_bgr;
    Typeset face;
    cv::Matx33d photo_from_cover;
    StampTruth truth;
};

Pressed pressStamp(const Surface& surface, const Layout& layout, const StampOptions& stamp,
                   std::uint32_t seed)
{
    TypesetOptions text = stamp.text;
    text.letter_px *= kFiner;
    InkOptions pad = stamp.ink;
    pad.smudge_px *= kFiner;
    pad.second_px *= kFiner;
    const Typeset face = typeset(text, seed);
    const cv::Matx23d placed = surfaceFromCover(layout, stamp, face);
    const cv::Matx33d surface_from_cover(placed(0, 0), placed(0, 1), placed(0, 2), placed(1, 0),
                                         placed(1, 1), placed(1, 2), 0, 0, 1);
    const cv::Matx33d photo_from_cover = layout.photoFromSurface() * surface_from_cover;
    return {pressInk(surface, face, placed, text.letter_px, pad, seed + 1), pad.colour_bgr, face,
            photo_from_cover, truthOf(face, photo_from_cover)};
}

double meanWithin(const Quad& quad, const cv::Mat& values)
{
    const std::vector<cv::Point> corners(quad.begin(), quad.end());
    cv::Mat place = cv::Mat::zeros(values.size(), CV_8UC1);
    cv::fillConvexPoly(place, corners, 255);
    return cv::mean(values, place)[0];
}

// How much of each letter's place is still in sight, and what that leaves of the outline.
StampTruth seenTruth(const Pressed& stamp, const cv::Mat& in_sight)
{
    StampTruth truth = stamp.truth;
    bool all = true;
    cv::Rect2d left;
    for (std::size_t i = 0; i < truth.lines.size(); ++i)
        for (std::size_t k = 0; k < truth.lines[i].letters.size(); ++k) {
            LetterTruth& letter = truth.lines[i].letters[k];
            letter.in_sight = meanWithin(letter.corners, in_sight);
            const cv::Rect2d& box = stamp.face.lines[i].letters[k].box;
            if (letter.in_sight < 0.5)
                all = false;
            else
                left = left.empty() ? box : left | box;
        }
    const cv::Rect2d bounds = stamp.face.bounds;
    left = {left.x, bounds.y, left.width, bounds.height};
    truth.in_sight = all ? truth.outline : quadOf(left, stamp.photo_from_cover);
    return truth;
}

// The piece on its table, in linear light.
cv::Mat sceneLight(const Surface& surface, const cv::Mat& mask, const Layout& layout,
                   const SceneOptions& options)
{
    const cv::Mat seen =
        toPhoto(lit(surface, lightOn(options, options.piece.turn_deg)), layout, options.size_px);
    if (options.piece.width_px <= 0)
        return seen;
    const cv::Mat there = toPhoto(mask, layout, options.size_px);
    cv::Mat scene = tableAround(there, options);
    scene.forEach<cv::Vec3f>([&](cv::Vec3f& value, const int* at) {
        const float share = there.at<float>(at[0], at[1]);
        value = value * (1 - share) + seen.at<cv::Vec3f>(at[0], at[1]) * share;
    });
    return scene;
}

void requireShare(const char* field, double value)
{
    if (!(value >= 0 && value <= 1))
        throw std::invalid_argument(std::string(field) + " must be 0 to 1");
}

void check(const SceneOptions& options)
{
    if (options.size_px.width < 32 || options.size_px.height < 32)
        throw std::invalid_argument("SceneOptions::size_px must be at least 32 x 32");
    if (std::abs(options.pitch_deg) > 40 || std::abs(options.yaw_deg) > 40)
        throw std::invalid_argument("SceneOptions::pitch_deg and yaw_deg must be -40 to 40");
    if (options.piece.width_px < 0)
        throw std::invalid_argument("PieceOptions::width_px must not be negative");
    requireShare("DetailOptions::waviness", options.details.waviness);
    requireShare("DetailOptions::fuzz", options.details.fuzz);
    requireShare("SceneLight::unevenness", options.light.unevenness);
    for (const StainOptions& stain : options.details.stains)
        requireShare("StainOptions::strength", stain.strength);
}

}  // namespace

DrawnPhoto drawPhoto(const SceneOptions& options)
{
    check(options);
    const Layout layout = layOut(options);
    Surface surface = makePiece(layout, options);
    std::vector<Pressed> stamps;
    for (const StampOptions& stamp : options.stamps)
        stamps.push_back(
            pressStamp(surface, layout, stamp,
                       options.seed * 31 + 100 + 2 * static_cast<std::uint32_t>(stamps.size())));

    const cv::Mat stays = creasePiece(surface, layout, options);
    cv::Mat ink = cv::Mat::zeros(layout.surface, CV_32FC1);
    for (const Pressed& stamp : stamps) {
        const cv::Mat left = stamp.density.mul(stays);
        dye(surface, left, stamp.colour_bgr);
        cv::max(ink, left, ink);
    }
    const cv::Mat mask = pieceMask(layout, options.piece, options.seed + 6);
    const cv::Mat in_sight = finishPiece(surface, layout, options).mul(mask);

    DrawnPhoto photo;
    const cv::Mat sight_seen = toPhoto(in_sight, layout, options.size_px);
    for (const Pressed& stamp : stamps)
        photo.stamps.push_back(seenTruth(stamp, sight_seen));
    cv::Mat scene = sceneLight(surface, mask, layout, options);
    cv::RNG random(options.seed + 8);
    unevenLight(scene, options.light, random);
    photo.pixels = photographed(scene, options.camera, options.seed + 7);
    toPhoto(ink.mul(in_sight), layout, options.size_px).convertTo(photo.ink, CV_8U, 255);
    return photo;
}

}  // namespace synthetic
