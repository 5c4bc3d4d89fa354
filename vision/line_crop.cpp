#include "vision/line_crop.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

namespace vision {

namespace {

constexpr double longest_crop_px = 6000;

}  // namespace

LineCrop cropLine(const cv::Mat& layer, const cv::Rect2d& box, const LineRendering& rendering)
{
    if (layer.empty() || layer.type() != CV_8UC1)
        throw std::invalid_argument("cropLine: the layer must be CV_8UC1 and not empty");
    if (!(box.width > 0 && box.height > 0))
        throw std::invalid_argument("cropLine: the box must have an area");
    if (!(rendering.letter_px > 0 && rendering.letter_px <= 500))
        throw std::invalid_argument("LineRendering.letter_px must be above 0, at most 500");
    if (!(rendering.rim >= 0 && rendering.rim <= 5))
        throw std::invalid_argument("LineRendering.rim must be from 0 to 5");
    if (!(rendering.smoothing >= 0 && rendering.smoothing <= 1))
        throw std::invalid_argument("LineRendering.smoothing must be from 0 to 1");
    LineCrop crop;
    const double side = rendering.rim * box.height;
    crop.scale =
        std::min(rendering.letter_px / box.height, longest_crop_px / (box.width + 2 * side));
    crop.origin = {box.x - side, box.y - side};
    const cv::Size size(
        std::max(8, static_cast<int>(std::lround((box.width + 2 * side) * crop.scale))),
        std::max(8, static_cast<int>(std::lround((box.height + 2 * side) * crop.scale))));
    cv::Mat source = layer;
    if (crop.scale < 0.75)  // averages what a single sample would skip
        cv::GaussianBlur(layer, source, {}, 0.4 / crop.scale);
    const cv::Matx23d crop_from_layer(crop.scale, 0, -crop.origin.x * crop.scale, 0, crop.scale,
                                      -crop.origin.y * crop.scale);
    cv::warpAffine(source, crop.grey, crop_from_layer, size, cv::INTER_CUBIC, cv::BORDER_REPLICATE);
    if (rendering.smoothing > 0)
        cv::GaussianBlur(crop.grey, crop.grey, {}, rendering.smoothing * box.height * crop.scale);
    return crop;
}

}  // namespace vision
