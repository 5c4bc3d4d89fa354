#pragma once

#include <filesystem>
#include <string>

#include <opencv2/core.hpp>
#include <opencv2/dnn.hpp>

namespace vision {

// The network that tells from a line of a mark whether it stands upright or on its head
// (vision/training tells how it was made), run by cv::dnn. Not for two threads at once.
class UprightNetwork {
public:
    // Loads upright.onnx.gz (gzip, RFC 1952) from the folder and tries it.
    // Throws WeightsError: the file is missing, empty or not as SHA256SUMS beside it has it, is
    // no network or one that answers something else.
    explicit UprightNetwork(const std::filesystem::path& folder);

    //   crop     as networkCrop cuts it; not changed
    //   returns  log odds that the line stands upright as it lies in the crop
    // Throws std::invalid_argument if the crop does not fit.
    double logOdds(const cv::Mat& crop);

private:
    cv::dnn::Net net_;
};

}  // namespace vision
