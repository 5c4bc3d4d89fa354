#include "tests/support/synthetic/pressed.h"

#include <cmath>
#include <vector>

#include <opencv2/imgproc.hpp>

#include "tests/support/synthetic/measure.h"
#include "tests/support/synthetic/stamp_ink.h"

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

Quad quadOf(const std::array<cv::Point2d, 4>& corners, const cv::Matx33d& photo_from_cover)
{
    Quad quad;
    for (std::size_t i = 0; i < 4; ++i)
        quad[i] = mapped(photo_from_cover, corners[i]);
    return quad;
}

Quad quadOf(const cv::Rect2d& box, const cv::Matx33d& photo_from_cover)
{
    const std::array<cv::Point2d, 4> corners{
        box.tl(), {box.x + box.width, box.y}, box.br(), {box.x, box.y + box.height}};
    return quadOf(corners, photo_from_cover);
}

StampTruth truthOf(const Typeset& face, const cv::Matx33d& photo_from_cover)
{
    StampTruth truth;
    truth.outline = quadOf(face.bounds, photo_from_cover);
    for (const SetLine& line : face.lines) {
        LineTruth told{line.text, quadOf(line.box, photo_from_cover), {}, {}};
        for (const SetLetter& letter : line.letters)
            told.letters.push_back({letter.text, quadOf(letter.corners, photo_from_cover)});
        for (const cv::Point2d& point : line.base)
            told.baseline.push_back(mapped(photo_from_cover, point));
        truth.lines.push_back(told);
    }
    const Quad& corners = truth.outline;
    const cv::Point2f right = corners[1] + corners[2] - corners[0] - corners[3];
    truth.up_deg = std::fmod(std::atan2(right.y, right.x) * 180 / CV_PI + 360, 360);
    return truth;
}

double meanWithin(const Quad& quad, const cv::Mat& values)
{
    const std::vector<cv::Point> corners(quad.begin(), quad.end());
    cv::Mat place = cv::Mat::zeros(values.size(), CV_8UC1);
    cv::fillConvexPoly(place, corners, 255);
    return cv::mean(values, place)[0];
}

}  // namespace

Pressed pressStamp(Surface& surface, const Layout& layout, const StampOptions& stamp,
                   std::uint32_t seed)
{
    TypesetOptions text = stamp.text;
    text.letter_px *= finer;
    InkOptions pad = stamp.ink;
    pad.smudge_px *= finer;
    pad.second_px *= finer;
    const Typeset face = typeset(text, seed);
    const cv::Matx23d placed = surfaceFromCover(layout, stamp, face);
    const cv::Matx33d surface_from_cover(placed(0, 0), placed(0, 1), placed(0, 2), placed(1, 0),
                                         placed(1, 1), placed(1, 2), 0, 0, 1);
    const cv::Matx33d photo_from_cover = layout.photoFromSurface() * surface_from_cover;
    const cv::Mat place = placedFace(face, placed, surface.height.size());
    if (stamp.depth_px > 0)
        engrave(surface, place, stamp.depth_px * finer);
    return {pressInk(surface, face, placed, text.letter_px, pad, seed + 1),
            place,
            pad.colour_bgr,
            face,
            photo_from_cover,
            truthOf(face, photo_from_cover)};
}

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
    truth.letter_px = letterHeight(truth);
    return truth;
}

}  // namespace synthetic
