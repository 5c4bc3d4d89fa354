#pragma once

#include <filesystem>
#include <string>

#include <opencv2/core.hpp>
#include <opencv2/dnn.hpp>

#include "vision/finder_table.h"

namespace vision {

// The network that tells where lines of text run in a picture (vision/training tells how it was
// made), run by cv::dnn. It knows capitals 6 to 64 pixels high. Not for two threads at once.
class FinderNetwork {
public:
    static constexpr double least_capital_px = 6, most_capital_px = 64;

    // Loads finder.onnx.gz (gzip, RFC 1952) from the folder and tries it.
    // Throws WeightsError: the file is missing, empty or not as SHA256SUMS beside it has it, is
    // no network or one that answers something else.
    explicit FinderNetwork(const std::filesystem::path& folder);

    const std::string& sha256() const { return sha256_; }  // of the weights

    //   grey     CV_8UC1, of any size, ink of either polarity; not changed
    //   returns  an answer for every square that the picture reaches into
    // Throws std::invalid_argument if the picture is empty or not CV_8UC1.
    FinderTable look(const cv::Mat& grey);

private:
    std::string sha256_;
    cv::dnn::Net net_;
};

// What the network is shown: the picture's grey with the light and the contrast around each pixel
// divided out, CV_32FC1, mean about 0 and deviation about 1.
//   grey  CV_8UC1
// Throws std::invalid_argument if the picture is empty or not CV_8UC1.
cv::Mat evenedOut(const cv::Mat& grey);

}  // namespace vision
