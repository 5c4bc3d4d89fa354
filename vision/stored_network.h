#pragma once

#include <filesystem>
#include <functional>
#include <string>

#include <opencv2/dnn.hpp>

namespace vision {

// A network of the project as it is stored: gzip (RFC 1952) of ONNX, run by cv::dnn.
struct StoredNetwork {
    cv::dnn::Net net;    // fusion is off: with it OpenCV 4.6 can answer zeros when the size of the
                         //   input changes
    std::string sha256;  // of the file, 64 hexadecimal digits
};

// Loads folder/name and tries it.
//   without  what becomes of the work without it, for the refusal
//   trial    runs the network once; may throw cv::Exception where it cannot be run
// Throws WeightsError if the file is missing, empty or not as SHA256SUMS beside it has it, or is
// no network that can be run.
StoredNetwork loadNetwork(const std::filesystem::path& folder, const std::string& name,
                          const std::string& without,
                          const std::function<void(cv::dnn::Net&)>& trial);

}  // namespace vision
