#include "vision/upright_network.h"

#include <stdexcept>
#include <utility>

#include "vision/network_crop.h"
#include "vision/stored_network.h"
#include "vision/weights_file.h"

namespace vision {

namespace {

constexpr const char* network_name = "upright.onnx.gz";
constexpr const char* without_it = "which way up a mark stands is told by reading alone";
constexpr int step_px = 8;  // columns of the input to one piece of evidence

// Evidence (1, 1, 1, columns / step_px), in log odds; it adds up.
double evidenceOf(cv::dnn::Net& net, const cv::Mat& input)
{
    net.setInput(cv::dnn::blobFromImage(input));
    const cv::Mat answer = net.forward();
    if (answer.dims != 4 || static_cast<int>(answer.total()) != input.cols / step_px)
        throw std::length_error("the network answers something else");
    return cv::sum(answer.reshape(1, 1))[0];
}

}  // namespace

UprightNetwork::UprightNetwork(const std::filesystem::path& folder)
{
    const auto trial = [](cv::dnn::Net& net) {
        evidenceOf(net, networkInput(cv::Mat::zeros(network_crop_px, network_crop_px, CV_8UC1)));
    };
    try {
        net_ = std::move(loadNetwork(folder, network_name, without_it, trial).net);
    } catch (const std::length_error&) {
        throw unusableWeights(folder / network_name, "is a network made for something else",
                              without_it);
    }
}

double UprightNetwork::logOdds(const cv::Mat& crop)
{
    return evidenceOf(net_, networkInput(crop));
}

}  // namespace vision
