#include "vision/line_crop.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

namespace vision {

namespace {

constexpr double longest_crop_px = 6000;

void check(const cv::Mat& layer, const LineRow& row, const LineRendering& rendering)
{
    if (layer.empty() || layer.type() != CV_8UC1)
        throw std::invalid_argument("cropLine: the layer must be CV_8UC1 and not empty");
    if (!(row.box.width > 0 && row.height() > 0))
        throw std::invalid_argument("cropLine: the line must have an area");
    if (!(rendering.letter_px > 0 && rendering.letter_px <= 500))
        throw std::invalid_argument("LineRendering.letter_px must be above 0, at most 500");
    if (!(rendering.rim >= 0 && rendering.rim <= 5))
        throw std::invalid_argument("LineRendering.rim must be from 0 to 5");
    if (!(rendering.smoothing >= 0 && rendering.smoothing <= 1))
        throw std::invalid_argument("LineRendering.smoothing must be from 0 to 1");
}

cv::Mat straightPixels(const cv::Mat& source, const LineCrop& crop, cv::Size size)
{
    const cv::Matx23d crop_from_layer(crop.scale, 0, -crop.origin.x * crop.scale, 0, crop.scale,
                                      -crop.origin.y * crop.scale);
    cv::Mat grey;
    cv::warpAffine(source, grey, crop_from_layer, size, cv::INTER_CUBIC, cv::BORDER_REPLICATE);
    return grey;
}

//   height  of the line, rectified pixels
cv::Mat unrolledPixels(const cv::Mat& source, const LineCrop& crop, double height, cv::Size size)
{
    cv::Mat layer_from_crop(size, CV_32FC2);
    for (int x = 0; x < size.width; ++x) {
        const double along = x / crop.scale - crop.side_px;
        const cv::Point2d middle = crop.path->at(along);
        const cv::Point2d across = crop.path->at(along, 1) - middle;
        for (int y = 0; y < size.height; ++y) {
            const double down = y / crop.scale - crop.side_px - height / 2;
            layer_from_crop.at<cv::Point2f>(y, x) = middle + down * across;
        }
    }
    cv::Mat grey;
    cv::remap(source, grey, layer_from_crop, {}, cv::INTER_CUBIC, cv::BORDER_REPLICATE);
    return grey;
}

}  // namespace

std::vector<LineRow> rowsOf(const RectifiedStamp& stamp)
{
    std::vector<LineRow> rows;
    for (std::size_t i = 0; i < stamp.lines.size(); ++i)
        rows.push_back({stamp.lines[i], stamp.curves.empty() ? LineCurve{} : stamp.curves.at(i)});
    return rows;
}

double LineCrop::rectifiedX(double crop_x) const
{
    return path ? path->at(crop_x / scale - side_px).x : origin.x + crop_x / scale;
}

LineCrop cropLine(const cv::Mat& layer, const LineRow& row, const LineRendering& rendering)
{
    check(layer, row, rendering);
    LineCrop crop;
    if (!row.curve.isStraight())
        crop.path.emplace(row.curve);
    const double height = row.height(), length = crop.path ? crop.path->length() : row.box.width;
    crop.side_px = rendering.rim * height;
    crop.scale =
        std::min(rendering.letter_px / height, longest_crop_px / (length + 2 * crop.side_px));
    crop.origin = {row.box.x - crop.side_px, row.box.y - crop.side_px};
    const auto pixels = [&](double extent) {
        return std::max(8, static_cast<int>(std::lround((extent + 2 * crop.side_px) * crop.scale)));
    };
    const cv::Size size(pixels(length), pixels(height));
    cv::Mat source = layer;
    if (crop.scale < 0.75)  // averages what a single sample would skip
        cv::GaussianBlur(layer, source, {}, 0.4 / crop.scale);
    crop.grey =
        crop.path ? unrolledPixels(source, crop, height, size) : straightPixels(source, crop, size);
    if (rendering.smoothing > 0)
        cv::GaussianBlur(crop.grey, crop.grey, {}, rendering.smoothing * height * crop.scale);
    return crop;
}

}  // namespace vision
