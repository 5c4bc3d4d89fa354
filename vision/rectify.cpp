#include "vision/rectify.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

#include "vision/tilt.h"

namespace vision {

namespace {

constexpr double most_skew_deg = 10;

double side(const cv::Point2f& a, const cv::Point2f& b)
{
    return std::hypot(static_cast<double>(a.x - b.x), static_cast<double>(a.y - b.y));
}

// Whether some part of the quadrilateral lies in the picture, looked at in a fine net. (OpenCV's
// intersectConvexConvex finds nothing in common for some that do, as of 4.6.)
bool reachesInto(const Quad& q, cv::Size picture)
{
    constexpr int net = 32;
    for (int i = 0; i <= net; ++i)
        for (int j = 0; j <= net; ++j) {
            const float u = static_cast<float>(i) / net, v = static_cast<float>(j) / net;
            const cv::Point2f at =
                (1 - v) * ((1 - u) * q[0] + u * q[1]) + v * ((1 - u) * q[3] + u * q[2]);
            if (at.x >= 0 && at.y >= 0 && at.x < static_cast<float>(picture.width) &&
                at.y < static_cast<float>(picture.height))
                return true;
        }
    return false;
}

void check(const Photo& photo, const StampOutline& outline, const RectifyOptions& options)
{
    if (photo.pixels.empty())
        throw std::invalid_argument("rectifyStamp: the photo has no pixels");
    const std::vector<cv::Point2f> polygon(outline.corners.begin(), outline.corners.end());
    if (!cv::isContourConvex(polygon) || cv::contourArea(polygon, true) <= 0)
        throw std::invalid_argument("rectifyStamp: the outline is not convex and clockwise");
    if (!outline.curves.empty() && outline.curves.size() != outline.lines.size())
        throw std::invalid_argument("rectifyStamp: as many courses as lines are needed, or none");
    if (!reachesInto(outline.corners, photo.pixels.size()))
        throw std::invalid_argument("rectifyStamp: the outline lies outside the photo");
    if (!(options.margin >= 0 && options.margin <= 2))
        throw std::invalid_argument("RectifyOptions.margin must be from 0 to 2");
    if (options.min_height_px < 0)
        throw std::invalid_argument("RectifyOptions.min_height_px must not be negative");
    if (options.max_width_px < 16)
        throw std::invalid_argument("RectifyOptions.max_width_px must be at least 16");
}

cv::Matx33d translation(double x, double y)
{
    return {1, 0, x, 0, 1, y, 0, 0, 1};
}

// The plane of the rectified picture before its residual skew is taken out.
struct Plan {
    cv::Matx33d photo_from_rectified;
    double width = 0, height = 0;  // pixels
};

Plan planOf(const StampOutline& outline, const RectifyOptions& options)
{
    const Quad& q = outline.corners;
    double width = std::max(1.0, (side(q[0], q[1]) + side(q[3], q[2])) / 2);
    double height = std::max(1.0, (side(q[0], q[3]) + side(q[1], q[2])) / 2);
    double scale = 1;
    if (options.min_height_px > 0 && height < options.min_height_px)
        scale = options.min_height_px / height;
    const double margin = options.margin * height;
    scale = std::min(scale, options.max_width_px / (width + 2 * margin));
    width *= scale;
    height *= scale;
    const auto w = static_cast<float>(width), h = static_cast<float>(height);
    const std::vector<cv::Point2f> from{{0, 0}, {w, 0}, {w, h}, {0, h}};
    const std::vector<cv::Point2f> to(q.begin(), q.end());
    const cv::Mat homography = cv::getPerspectiveTransform(from, to);
    Plan plan;
    plan.photo_from_rectified =
        cv::Matx33d(homography) * translation(-margin * scale, -margin * scale);
    plan.width = width + 2 * margin * scale;
    plan.height = height + 2 * margin * scale;
    return plan;
}

cv::Point2d apply(const cv::Matx33d& homography, const cv::Point2d& point)
{
    const cv::Vec3d p = homography * cv::Vec3d(point.x, point.y, 1);
    return {p[0] / p[2], p[1] / p[2]};
}

// Mean tilt of the lines in the plan's picture, clockwise in degrees, weighted by length.
double skewOf(const Plan& plan, const std::vector<Quad>& lines)
{
    const cv::Matx33d rectified_from_photo = plan.photo_from_rectified.inv();
    cv::Point2d sum{};
    for (const Quad& line : lines) {
        const cv::Point2d left = apply(rectified_from_photo, (line[0] + line[3]) / 2);
        const cv::Point2d right = apply(rectified_from_photo, (line[1] + line[2]) / 2);
        sum += right - left;
    }
    return std::atan2(sum.y, sum.x) * 180 / CV_PI;
}

cv::Mat cutOut(const Photo& photo, const Plan& plan)
{
    const cv::Size size(std::max(1, static_cast<int>(std::ceil(plan.width))),
                        std::max(1, static_cast<int>(std::ceil(plan.height))));
    cv::Mat pixels;
    cv::warpPerspective(photo.pixels, pixels, cv::Mat(plan.photo_from_rectified), size,
                        cv::INTER_CUBIC | cv::WARP_INVERSE_MAP, cv::BORDER_REPLICATE);
    return pixels;
}

// The same where the outline names no lines: as seen in the plan's picture.
double skewSeen(const Photo& photo, const Plan& plan)
{
    cv::Mat grey;
    cv::cvtColor(cutOut(photo, plan), grey, cv::COLOR_BGR2GRAY);
    return tiltOfText(grey, most_skew_deg);
}

// Turns the plan's picture about its centre so that what ran at `skew_deg` runs level.
Plan levelled(const Plan& plan, double skew_deg)
{
    const double a = skew_deg * CV_PI / 180, c = std::cos(a), s = std::sin(a);
    Plan level;
    level.width = std::abs(plan.width * c) + std::abs(plan.height * s);
    level.height = std::abs(plan.width * s) + std::abs(plan.height * c);
    const cv::Matx33d turn(c, -s, 0, s, c, 0, 0, 0, 1);
    level.photo_from_rectified = plan.photo_from_rectified *
                                 translation((plan.width - 1) / 2, (plan.height - 1) / 2) * turn *
                                 translation(-(level.width - 1) / 2, -(level.height - 1) / 2);
    return level;
}

// The upright box around points of the photo.
cv::Rect2d boxOf(const std::vector<cv::Point2f>& points, const cv::Matx33d& rectified_from_photo)
{
    double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
    for (const cv::Point2f& point : points) {
        const cv::Point2d p = apply(rectified_from_photo, point);
        left = std::min(left, p.x);
        right = std::max(right, p.x);
        top = std::min(top, p.y);
        bottom = std::max(bottom, p.y);
    }
    return {left, top, right - left, bottom - top};
}

void addLines(const StampOutline& outline, RectifiedStamp& stamp)
{
    const cv::Matx33d rectified_from_photo = stamp.photo_from_rectified.inv();
    for (std::size_t i = 0; i < outline.lines.size(); ++i) {
        const bool straight = outline.curves.empty() || outline.curves[i].isStraight();
        const Quad& corners = outline.lines[i];
        stamp.lines.push_back(boxOf(straight
                                        ? std::vector<cv::Point2f>(corners.begin(), corners.end())
                                        : bandOf(outline.curves[i]),
                                    rectified_from_photo));
    }
    for (const LineCurve& curve : outline.curves)
        stamp.curves.push_back(mappedCurve(curve, rectified_from_photo));
}

// A point of the picture in that picture turned by 180 degrees or flipped; its own inverse.
struct Reflection {
    cv::Matx33d to_from;

    cv::Rect2d box(const cv::Rect2d& of) const
    {
        const cv::Point2d a = apply(to_from, of.tl()), b = apply(to_from, of.br());
        return {std::min(a.x, b.x), std::min(a.y, b.y), of.width, of.height};
    }
    // Both ways of reflecting let a line run from right to left: it is read from its other end.
    LineCurve curve(const LineCurve& of) const { return reversedCurve(mappedCurve(of, to_from)); }
};

Reflection flipOf(cv::Size size)
{
    return {{-1, 0, size.width - 1.0, 0, 1, 0, 0, 0, 1}};
}

Reflection halfTurnOf(cv::Size size)
{
    return {{-1, 0, size.width - 1.0, 0, -1, size.height - 1.0, 0, 0, 1}};
}

void flipLeftRight(RectifiedStamp& stamp)
{
    cv::Mat flipped;
    cv::flip(stamp.pixels, flipped, 1);
    stamp.pixels = flipped;
    const Reflection flip = flipOf(flipped.size());
    stamp.photo_from_rectified = stamp.photo_from_rectified * flip.to_from;
    for (cv::Rect2d& line : stamp.lines)
        line = flip.box(line);
    for (LineCurve& curve : stamp.curves)
        curve = flip.curve(curve);
    stamp.mirrored = !stamp.mirrored;
}

}  // namespace

RectifiedStamp rectifyStamp(const Photo& photo, const StampOutline& outline,
                            const RectifyOptions& options)
{
    check(photo, outline, options);
    Plan plan = planOf(outline, options);
    double up_deg = upOf(outline.corners);
    if (options.correct_skew) {
        const double skew =
            outline.lines.empty() ? skewSeen(photo, plan) : skewOf(plan, outline.lines);
        if (std::abs(skew) > 0.1 && std::abs(skew) <= most_skew_deg) {
            plan = levelled(plan, skew);
            up_deg = std::fmod(up_deg + skew + 360, 360);
        }
    }
    RectifiedStamp stamp;
    stamp.photo_from_rectified = plan.photo_from_rectified;
    stamp.up_deg = up_deg;
    stamp.pixels = cutOut(photo, plan);
    addLines(outline, stamp);
    if (options.mirrored)
        flipLeftRight(stamp);
    return stamp;
}

RectifiedStamp turnedOver(const RectifiedStamp& stamp)
{
    RectifiedStamp turned;
    cv::rotate(stamp.pixels, turned.pixels, cv::ROTATE_180);
    const Reflection turn = halfTurnOf(stamp.pixels.size());
    turned.photo_from_rectified = stamp.photo_from_rectified * turn.to_from;
    turned.mirrored = stamp.mirrored;
    turned.up_deg = std::fmod(stamp.up_deg + 180, 360);
    for (auto line = stamp.lines.rbegin(); line != stamp.lines.rend(); ++line)
        turned.lines.push_back(turn.box(*line));
    for (auto curve = stamp.curves.rbegin(); curve != stamp.curves.rend(); ++curve)
        turned.curves.push_back(turn.curve(*curve));
    return turned;
}

double lineHeight(const RectifiedStamp& stamp, std::size_t line)
{
    if (stamp.curves.empty() || stamp.curves.at(line).isStraight())
        return stamp.lines.at(line).height;
    return stamp.curves[line].height_px;
}

cv::Point2d photoFromRectified(const RectifiedStamp& stamp, const cv::Point2d& point)
{
    return apply(stamp.photo_from_rectified, point);
}

}  // namespace vision
