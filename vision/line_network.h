#pragma once

#include <filesystem>
#include <string>

#include <opencv2/core.hpp>
#include <opencv2/dnn.hpp>

#include "vision/ctc_decode.h"
#include "vision/network_crop.h"

namespace vision {

// The network that reads a line of a faint mark (vision/training tells how it was made), run by
// cv::dnn. Not for two threads at once.
class LineNetwork {
public:
    static constexpr int height_px = network_crop_px;  // of the crops it takes
    static constexpr int step_px = 4;  // columns of a crop to one step of the answer

    // Loads line_reader.onnx.gz (gzip, RFC 1952) and characters.txt from the folder and tries them.
    // Throws WeightsError: a file is missing, empty or not as SHA256SUMS beside them has it, or
    // the network was made for other characters.
    explicit LineNetwork(const std::filesystem::path& folder);

    const LineClasses& classes() const { return classes_; }
    const std::string& sha256() const { return sha256_; }  // of the weights

    //   crop     CV_8UC1, height_px high, of any width and polarity; not changed
    //   returns  CV_32F log probabilities, a row a step, a column a class
    // Throws std::invalid_argument if the crop does not fit.
    cv::Mat logShares(const cv::Mat& crop);

private:
    cv::Mat forward(cv::dnn::Net& net, const cv::Mat& padded) const;

    LineClasses classes_;
    std::string sha256_;
    cv::dnn::Net net_;
};

}  // namespace vision
