#pragma once

#include <QImage>
#include <QPointF>
#include <opencv2/core.hpp>

namespace gui {

// The pixels of a photo or layer as the window toolkit wants them; the picture owns its pixels.
//   pixels  CV_8UC3 (BGR) or CV_8UC1; empty gives a null picture
// Throws std::invalid_argument for any other kind.
QImage pictureOf(const cv::Mat& pixels);

// The same, brought to this size in physical pixels: averaged when it gets smaller, smooth when
// larger.
QImage pictureOf(const cv::Mat& pixels, cv::Size size);

inline QPointF pointOf(const cv::Point2f& corner)
{
    return {corner.x, corner.y};
}

}  // namespace gui
