#include "vision/line_network.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "vision/network_crop.h"
#include "vision/stored_network.h"
#include "vision/weights_file.h"

namespace vision {

namespace {

constexpr const char* network_name = "line_reader.onnx.gz";
constexpr const char* characters_name = "characters.txt";

// One class a line, the blank between words by its name; the last two are traces and lost.
LineClasses classesIn(const std::filesystem::path& folder)
{
    const std::vector<unsigned char> bytes = checkedWeights(folder, characters_name);
    LineClasses classes;
    std::string line;
    for (const unsigned char byte : bytes) {
        if (byte == '\r')
            continue;
        if (byte != '\n') {
            line += static_cast<char>(byte);
            continue;
        }
        classes.characters.push_back(line == "space" ? " " : line);
        line.clear();
    }
    const std::size_t count = classes.characters.size();
    if (count < 3 || classes.characters[count - 2] != "traces" ||
        classes.characters[count - 1] != "lost")
        throw unusableWeights(folder / characters_name, "does not list the network's characters");
    classes.characters.resize(count - 2);
    return classes;
}

}  // namespace

LineNetwork::LineNetwork(const std::filesystem::path& folder) : classes_(classesIn(folder))
{
    const auto trial = [this](cv::dnn::Net& net) {
        for (const int width : {height_px, 3 * height_px})  // one that takes any width
            forward(net, networkInput(cv::Mat::zeros(height_px, width, CV_8UC1)));
    };
    try {
        StoredNetwork stored = loadNetwork(folder, network_name, without_line_reader, trial);
        net_ = std::move(stored.net);
        sha256_ = std::move(stored.sha256);
    } catch (const std::length_error&) {
        throw unusableWeights(
            folder / network_name,
            std::string("was made for other characters than ") + characters_name + " lists");
    }
}

cv::Mat LineNetwork::logShares(const cv::Mat& crop)
{
    const cv::Mat shares = forward(net_, networkInput(crop));
    const int steps = std::min(shares.rows, (networkInputReach(crop) + step_px - 1) / step_px);
    return shares.rowRange(0, steps).clone();
}

// Logits (1, classes, 1, steps) as log probabilities, a row a step.
cv::Mat LineNetwork::forward(cv::dnn::Net& net, const cv::Mat& padded) const
{
    net.setInput(cv::dnn::blobFromImage(padded));
    const cv::Mat logits = net.forward();
    if (logits.dims != 4 || logits.size[1] != classes_.count() || logits.size[2] != 1)
        throw std::length_error("the network answers other classes");
    const int steps = logits.size[3];
    cv::Mat table = cv::Mat(classes_.count(), steps, CV_32F, const_cast<uchar*>(logits.data)).t();
    for (int t = 0; t < steps; ++t) {
        float* row = table.ptr<float>(t);
        const float most = *std::max_element(row, row + table.cols);
        double sum = 0;
        for (int c = 0; c < table.cols; ++c)
            sum += std::exp(static_cast<double>(row[c] - most));
        const auto whole = most + static_cast<float>(std::log(sum));
        for (int c = 0; c < table.cols; ++c)
            row[c] -= whole;
    }
    return table;
}

}  // namespace vision
