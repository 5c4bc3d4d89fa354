#include "tests/support/synthetic/layout.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <opencv2/imgproc.hpp>

namespace synthetic {
namespace {

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

}  // namespace

cv::Point2d mapped(const cv::Matx33d& to_from, const cv::Point2d& point)
{
    const cv::Vec3d p = to_from * cv::Vec3d(point.x, point.y, 1);
    return {p[0] / p[2], p[1] / p[2]};
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
    layout.plane_from_surface = {1 / finer, 0,         static_cast<double>(window.x),
                                 0,         1 / finer, static_cast<double>(window.y),
                                 0,         0,         1};
    layout.surface = {cvRound(window.width * finer), cvRound(window.height * finer)};
    return layout;
}

cv::Mat toPhoto(const cv::Mat& drawn, const Layout& layout, cv::Size photo)
{
    cv::Mat seen;
    cv::warpPerspective(drawn, seen, layout.photoFromSurface(), photo, cv::INTER_LINEAR,
                        cv::BORDER_CONSTANT);
    return seen;
}

}  // namespace synthetic
