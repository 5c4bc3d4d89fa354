#include "vision/network_crop.h"

#include <algorithm>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

namespace vision {

namespace {

constexpr LineRendering rendering{.letter_px = 30, .rim = 0.3, .smoothing = 0};
constexpr int width_unit_px = 32;  // widths are rounded up to it: few sizes, much reuse of memory
constexpr int room_px = 12;        // bare ground behind the last letter, as in training

}  // namespace

LineCrop networkCrop(const cv::Mat& layer, const LineRow& row)
{
    LineCrop crop = cropLine(layer, row, rendering);
    if (crop.grey.rows != network_crop_px)  // a very long line was made smaller
        cv::resize(crop.grey, crop.grey, {crop.grey.cols, network_crop_px}, 0, 0, cv::INTER_CUBIC);
    return crop;
}

cv::Mat networkInput(const cv::Mat& crop)
{
    if (crop.type() != CV_8UC1 || crop.rows != network_crop_px || crop.cols < 1)
        throw std::invalid_argument("networkInput: the crop must be CV_8UC1, 48 pixels high");
    cv::Mat value;
    crop.convertTo(value, CV_32F);
    cv::Scalar mean, deviation;
    cv::meanStdDev(value, mean, deviation);
    value = (value - mean[0]) / std::max(deviation[0], 0.25);
    const int wide = (networkInputReach(crop) + width_unit_px - 1) / width_unit_px * width_unit_px;
    cv::copyMakeBorder(value, value, 0, 0, 0, wide - crop.cols, cv::BORDER_REPLICATE);
    return value;
}

int networkInputReach(const cv::Mat& crop)
{
    return crop.cols + room_px;
}

double networkRim()
{
    return rendering.rim * rendering.letter_px;
}

}  // namespace vision
