#include "vision/finder_network.h"

#include <algorithm>
#include <stdexcept>

#include <opencv2/imgproc.hpp>

#include "vision/stored_network.h"
#include "vision/weights_file.h"

namespace vision {

namespace {

constexpr const char* network_name = "finder.onnx.gz";
constexpr const char* without_it = "marks are looked for by their letters' shapes alone";
constexpr int size_unit_px = 32;         // sides are rounded up to it, as the network halves them
constexpr int light_window_px = 65;      // of light and contrast around a pixel, as in training
constexpr double least_contrast = 0.02;  // of white: fainter is noise, and not drawn out
constexpr int strip_rows = 128;          // of a picture that are evened out at a time
constexpr int parts = 4;                 // of the answer: core, height, cosine, sine

int roundedUp(int px)
{
    return (px + size_unit_px - 1) / size_unit_px * size_unit_px;
}

// Logits (1, parts, rows, columns) of the network.
cv::Mat answerOf(cv::dnn::Net& net, const cv::Mat& padded)
{
    net.setInput(cv::dnn::blobFromImage(padded));
    const cv::Mat answer = net.forward();
    constexpr int step = FinderTable::step_px;
    if (answer.dims != 4 || answer.size[1] != parts || answer.size[2] != padded.rows / step ||
        answer.size[3] != padded.cols / step)
        throw std::length_error("the network answers something else");
    return answer;
}

// Divides light and contrast out of a strip of a picture.
void evenOut(const cv::Mat& level, cv::Mat even)
{
    const cv::Size window(light_window_px, light_window_px);
    cv::Mat mean, deviation;
    cv::blur(level, mean, window, {-1, -1}, cv::BORDER_REFLECT_101);
    cv::sqrBoxFilter(level, deviation, CV_32F, window, {-1, -1}, true, cv::BORDER_REFLECT_101);
    deviation -= mean.mul(mean);
    cv::max(deviation, 0, deviation);
    cv::sqrt(deviation, deviation);
    cv::max(deviation, least_contrast, deviation);
    cv::subtract(level, mean, mean);
    cv::divide(mean, deviation, even);
}

}  // namespace

cv::Mat evenedOut(const cv::Mat& grey)
{
    if (grey.empty() || grey.type() != CV_8UC1)
        throw std::invalid_argument("evenedOut: the picture must be CV_8UC1 and not empty");
    cv::Mat level, even(grey.size(), CV_32FC1);
    grey.convertTo(level, CV_32F, 1.0 / 255);
    // In strips, which stay near the processor; filters look beyond a strip by themselves.
    const int strips = (grey.rows + strip_rows - 1) / strip_rows;
    cv::parallel_for_({0, strips}, [&](const cv::Range& some) {
        for (int i = some.start; i < some.end; ++i) {
            const cv::Range rows(i * strip_rows, std::min((i + 1) * strip_rows, grey.rows));
            evenOut(level.rowRange(rows), even.rowRange(rows));
        }
    });
    return even;
}

FinderNetwork::FinderNetwork(const std::filesystem::path& folder)
{
    try {
        StoredNetwork stored = loadNetwork(folder, network_name, without_it, [](cv::dnn::Net& net) {
            answerOf(net, cv::Mat::zeros(size_unit_px, size_unit_px, CV_32FC1));
        });
        net_ = std::move(stored.net);
        sha256_ = std::move(stored.sha256);
    } catch (const std::length_error&) {
        throw unusableWeights(folder / network_name, "is a network made for something else",
                              without_it);
    }
}

FinderTable FinderNetwork::look(const cv::Mat& grey)
{
    cv::Mat padded = evenedOut(grey);
    cv::copyMakeBorder(padded, padded, 0, roundedUp(grey.rows) - grey.rows, 0,
                       roundedUp(grey.cols) - grey.cols, cv::BORDER_REPLICATE);
    const cv::Mat answer = answerOf(net_, padded);
    constexpr int step = FinderTable::step_px;
    const cv::Rect reached(0, 0, (grey.cols + step - 1) / step, (grey.rows + step - 1) / step);
    const auto part = [&](int which) {
        const auto* numbers = answer.ptr<float>(0, which);
        return cv::Mat(answer.size[2], answer.size[3], CV_32FC1,
                       const_cast<float*>(numbers))(reached)
            .clone();
    };
    return {part(0), part(1), part(2), part(3)};
}

}  // namespace vision
