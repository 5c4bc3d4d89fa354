#include "app/gui/picture.h"

#include <opencv2/imgproc.hpp>
#include <stdexcept>

namespace gui {

QImage pictureOf(const cv::Mat& pixels)
{
    if (pixels.empty())
        return {};
    if (pixels.type() != CV_8UC3 && pixels.type() != CV_8UC1)
        throw std::invalid_argument("pictureOf: pixels must be CV_8UC3 or CV_8UC1");
    const auto format =
        pixels.type() == CV_8UC3 ? QImage::Format_BGR888 : QImage::Format_Grayscale8;
    const QImage view(pixels.data, pixels.cols, pixels.rows, static_cast<qsizetype>(pixels.step),
                      format);
    return view.copy();
}

QImage pictureOf(const cv::Mat& pixels, cv::Size size)
{
    if (pixels.empty() || size.width < 1 || size.height < 1)
        return {};
    cv::Mat scaled;
    const bool smaller = size.width < pixels.cols;
    cv::resize(pixels, scaled, size, 0, 0, smaller ? cv::INTER_AREA : cv::INTER_CUBIC);
    return pictureOf(scaled);
}

}  // namespace gui
