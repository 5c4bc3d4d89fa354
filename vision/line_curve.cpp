#include "vision/line_curve.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace vision {

namespace {

cv::Point2d mappedPoint(const cv::Matx33d& to_from, const cv::Point2d& point)
{
    const cv::Vec3d p = to_from * cv::Vec3d(point.x, point.y, 1);
    return {p[0] / p[2], p[1] / p[2]};
}

cv::Point2d unit(const cv::Point2d& v)
{
    const double length = cv::norm(v);
    return length > 0 ? v / length : cv::Point2d(1, 0);
}

// To the right of a direction as the picture shows it, y down: where the letters' feet are.
cv::Point2d towardsFeet(const cv::Point2d& direction)
{
    return {-direction.y, direction.x};
}

}  // namespace

CurvePath::CurvePath(const LineCurve& curve)
{
    for (const cv::Point2f& point : curve.middle)
        if (points_.empty() || cv::norm(cv::Point2d(point) - points_.back()) > 1e-6)
            points_.emplace_back(point);
    if (points_.size() < 2)
        throw std::invalid_argument("CurvePath: the line has no course but a straight one");
    along_.push_back(0);
    for (std::size_t i = 1; i < points_.size(); ++i)
        along_.push_back(along_.back() + cv::norm(points_[i] - points_[i - 1]));
    for (std::size_t i = 0; i < points_.size(); ++i)
        directions_.push_back(
            unit(points_[std::min(i + 1, points_.size() - 1)] - points_[i > 0 ? i - 1 : 0]));
    // The ends lean on as the inner ones do: their only piece runs along a chord.
    if (points_.size() > 2) {
        const std::size_t last = points_.size() - 1;
        directions_[0] = unit(2 * unit(points_[1] - points_[0]) - directions_[1]);
        directions_[last] =
            unit(2 * unit(points_[last] - points_[last - 1]) - directions_[last - 1]);
    }
}

std::size_t CurvePath::pieceAt(double along) const
{
    const auto next = std::upper_bound(along_.begin() + 1, along_.end() - 1, along);
    return static_cast<std::size_t>(next - along_.begin()) - 1;
}

cv::Point2d CurvePath::directionAt(std::size_t piece, double share) const
{
    return unit((1 - share) * directions_[piece] + share * directions_[piece + 1]);
}

cv::Point2d CurvePath::at(double along, double across) const
{
    const double inside = std::clamp(along, 0.0, length());
    const std::size_t piece = pieceAt(inside);
    const double share = (inside - along_[piece]) / (along_[piece + 1] - along_[piece]);
    const cv::Point2d direction = directionAt(piece, share);
    return (1 - share) * points_[piece] + share * points_[piece + 1] +
           (along - inside) * direction + across * towardsFeet(direction);
}

LineCurve mappedCurve(const LineCurve& curve, const cv::Matx33d& to_from)
{
    if (curve.isStraight())
        return {};
    const CurvePath path(curve);
    LineCurve mapped;
    for (const cv::Point2f& point : curve.middle)
        mapped.middle.emplace_back(mappedPoint(to_from, point));
    constexpr int looks = 9;
    for (int i = 0; i < looks; ++i) {
        const double along = path.length() * i / (looks - 1);
        const cv::Point2d head = mappedPoint(to_from, path.at(along, -curve.height_px / 2));
        const cv::Point2d foot = mappedPoint(to_from, path.at(along, curve.height_px / 2));
        mapped.height_px += cv::norm(foot - head) / looks;
    }
    return mapped;
}

LineCurve reversedCurve(LineCurve curve)
{
    std::reverse(curve.middle.begin(), curve.middle.end());
    return curve;
}

std::vector<cv::Point2f> bandOf(const LineCurve& curve)
{
    if (curve.isStraight())
        return {};
    const CurvePath path(curve);
    std::vector<cv::Point2f> heads, feet;
    const std::size_t steps = std::max<std::size_t>(curve.middle.size(), 9);
    for (std::size_t i = 0; i < steps; ++i) {
        const double along =
            path.length() * static_cast<double>(i) / static_cast<double>(steps - 1);
        heads.emplace_back(path.at(along, -curve.height_px / 2));
        feet.emplace_back(path.at(along, curve.height_px / 2));
    }
    heads.insert(heads.end(), feet.rbegin(), feet.rend());
    return heads;
}

}  // namespace vision
