#include "app/gui/outline_edits.h"

#include <QObject>
#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>

namespace gui {

namespace {

constexpr double least_area_px = 64;

bool isUsable(const vision::Quad& corners)
{
    const std::vector<cv::Point2f> points(corners.begin(), corners.end());
    // Clockwise on the screen, where y runs down, is a positive area.
    return cv::isContourConvex(points) && cv::contourArea(points, true) > least_area_px;
}

}  // namespace

std::optional<vision::Quad> movedHandle(const vision::Quad& corners, int handle, QPointF by,
                                        QSize photo)
{
    const float right = static_cast<float>(photo.width() - 1);
    const float bottom = static_cast<float>(photo.height() - 1);
    vision::Quad moved = corners;
    for (int i = 0; i < 4; ++i) {
        if (handle != whole_outline && handle != i)
            continue;
        cv::Point2f& corner = moved[static_cast<std::size_t>(i)];
        corner.x = std::clamp(corner.x + static_cast<float>(by.x()), 0.0f, right);
        corner.y = std::clamp(corner.y + static_cast<float>(by.y()), 0.0f, bottom);
    }
    if (!isUsable(moved))
        return std::nullopt;
    return moved;
}

std::optional<vision::Quad> turnedOutline(const vision::Quad& corners, double degrees, QSize photo)
{
    const cv::Point2f middle = (corners[0] + corners[1] + corners[2] + corners[3]) / 4;
    const double angle = degrees * CV_PI / 180;
    const float cosine = static_cast<float>(std::cos(angle));
    const float sine = static_cast<float>(std::sin(angle));
    vision::Quad turned = corners;
    for (cv::Point2f& corner : turned) {
        const cv::Point2f arm = corner - middle;
        corner = middle + cv::Point2f(arm.x * cosine - arm.y * sine, arm.x * sine + arm.y * cosine);
        if (corner.x < 0 || corner.y < 0 || corner.x > static_cast<float>(photo.width() - 1) ||
            corner.y > static_cast<float>(photo.height() - 1))
            return std::nullopt;
    }
    return turned;
}

double angleBetween(const vision::Quad& corners, QPointF from, QPointF to)
{
    const cv::Point2f middle = (corners[0] + corners[1] + corners[2] + corners[3]) / 4;
    const auto angle = [&](QPointF point) {
        return std::atan2(point.y() - middle.y, point.x() - middle.x) * 180 / CV_PI;
    };
    return std::remainder(angle(to) - angle(from), 360);
}

std::optional<int> handleAt(const vision::Quad& corners, QPointF point, double reach)
{
    std::optional<int> nearest;
    double least = reach;
    for (int i = 0; i < 4; ++i) {
        const cv::Point2f& corner = corners[static_cast<std::size_t>(i)];
        const double away = std::hypot(corner.x - point.x(), corner.y - point.y());
        if (away <= least) {
            least = away;
            nearest = i;
        }
    }
    if (nearest)
        return nearest;
    const std::vector<cv::Point2f> points(corners.begin(), corners.end());
    const cv::Point2f at(static_cast<float>(point.x()), static_cast<float>(point.y()));
    if (cv::pointPolygonTest(points, at, false) >= 0)
        return whole_outline;
    return std::nullopt;
}

vision::Quad newOutline(QPointF middle, QSize photo)
{
    const double half_width = std::max(8.0, photo.width() / 8.0);
    const double half_height = std::max(6.0, half_width / 3);
    const double x =
        std::clamp(middle.x(), half_width, std::max(half_width, photo.width() - 1 - half_width));
    const double y = std::clamp(middle.y(), half_height,
                                std::max(half_height, photo.height() - 1 - half_height));
    const auto corner = [](double cx, double cy) {
        return cv::Point2f(static_cast<float>(cx), static_cast<float>(cy));
    };
    return {corner(x - half_width, y - half_height), corner(x + half_width, y - half_height),
            corner(x + half_width, y + half_height), corner(x - half_width, y + half_height)};
}

QString handleWord(int handle)
{
    switch (handle) {
        case 0:
            return QObject::tr("top left corner");
        case 1:
            return QObject::tr("top right corner");
        case 2:
            return QObject::tr("bottom right corner");
        case 3:
            return QObject::tr("bottom left corner");
        default:
            return QObject::tr("whole outline");
    }
}

}  // namespace gui
