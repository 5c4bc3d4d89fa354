#pragma once

#include <opencv2/core.hpp>

#include "tests/support/synthetic_stamp.h"

namespace synthetic {

constexpr double finer = 1.5;  // the piece is drawn so much finer than the photo shows it

// Where the piece lies. Its plane has the photo's scale, its origin in the photo's middle and x
// along the strap; the drawn surface is a window of that plane, finer times as fine.
struct Layout {
    cv::Matx33d photo_from_plane;
    cv::Matx33d plane_from_surface;
    cv::Size surface;

    cv::Matx33d photoFromSurface() const { return photo_from_plane * plane_from_surface; }
};

Layout layOut(const SceneOptions& options);

cv::Point2d mapped(const cv::Matx33d& to_from, const cv::Point2d& point);

// Something drawn on the surface, as the photo shows it; black beside it.
cv::Mat toPhoto(const cv::Mat& drawn, const Layout& layout, cv::Size photo);

}  // namespace synthetic
