#include "app/gui/outline_edits.h"

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

const char* handleWord(int handle)
{
    constexpr const char* words[] = {"top left corner", "top right corner", "bottom right corner",
                                     "bottom left corner", "whole outline"};
    return words[std::clamp(handle, 0, whole_outline)];
}

}  // namespace gui
