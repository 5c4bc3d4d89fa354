#include "vision/line_network.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>
#include <vector>

#include <zlib.h>
#include <opencv2/core/utils/logger.hpp>
#include <opencv2/imgproc.hpp>

#include "vision/sha256.h"
#include "vision/weights_file.h"

namespace vision {

namespace {

constexpr const char* network_name = "line_reader.onnx.gz";
constexpr std::size_t most_bytes = 256u << 20;  // of the network, inflated
constexpr const char* characters_name = "characters.txt";
constexpr int width_unit_px = 32;  // widths are rounded up to it: few sizes, much reuse of memory
constexpr int room_px = 12;        // bare ground behind the last letter, as in training

// A gzip file (RFC 1952) as it was before; empty where it is none, or only a part of one.
std::vector<unsigned char> inflated(const std::vector<unsigned char>& packed)
{
    std::vector<unsigned char> bytes(4 * packed.size());
    z_stream stream{};
    if (inflateInit2(&stream, 16 + MAX_WBITS) != Z_OK)
        return {};
    stream.next_in = const_cast<unsigned char*>(packed.data());
    stream.avail_in = static_cast<uInt>(packed.size());
    int state = Z_OK;
    while (state == Z_OK && bytes.size() <= most_bytes) {
        if (stream.total_out == bytes.size())
            bytes.resize(2 * bytes.size());
        stream.next_out = bytes.data() + stream.total_out;
        stream.avail_out = static_cast<uInt>(bytes.size() - stream.total_out);
        state = inflate(&stream, Z_NO_FLUSH);
    }
    bytes.resize(state == Z_STREAM_END ? stream.total_out : 0);
    inflateEnd(&stream);
    return bytes;
}

// One class a line, the blank between words by its name; the last two are traces and lost.
LineClasses classesIn(const std::filesystem::path& folder)
{
    const std::vector<unsigned char> bytes = checkedWeights(folder, characters_name);
    LineClasses classes;
    std::string line;
    for (const unsigned char byte : bytes) {
        if (byte != '\n') {
            line += static_cast<char>(byte);
            continue;
        }
        classes.characters.push_back(line == "space" ? " " : line);
        line.clear();
    }
    if (classes.characters.size() < 3)
        throw unusableWeights(folder / characters_name, "does not list the network's characters");
    classes.characters.resize(classes.characters.size() - 2);
    return classes;
}

// OpenCV tells on standard error what it throws besides.
class QuietOpenCv {
public:
    QuietOpenCv() : before_(cv::utils::logging::setLogLevel(cv::utils::logging::LOG_LEVEL_SILENT))
    {
    }
    ~QuietOpenCv() { cv::utils::logging::setLogLevel(before_); }
    QuietOpenCv(const QuietOpenCv&) = delete;
    QuietOpenCv& operator=(const QuietOpenCv&) = delete;

private:
    cv::utils::logging::LogLevel before_;
};

}  // namespace

LineNetwork::LineNetwork(const std::filesystem::path& folder) : classes_(classesIn(folder))
{
    const std::vector<unsigned char> bytes = checkedWeights(folder, network_name);
    sha256_ = sha256Hex(bytes);
    const QuietOpenCv quiet;
    try {
        const std::vector<unsigned char> network = inflated(bytes);
        net_ =
            cv::dnn::readNetFromONNX(reinterpret_cast<const char*>(network.data()), network.size());
        // With fusion a network whose input changes its width can answer zeros (OpenCV 4.6).
        net_.enableFusion(false);
        logShares(cv::Mat(height_px, 64, CV_8UC1, cv::Scalar::all(128)));
    } catch (const cv::Exception&) {
        throw unusableWeights(folder / network_name, "is no network that can be run");
    } catch (const std::length_error&) {
        throw unusableWeights(
            folder / network_name,
            std::string("was made for other characters than ") + characters_name + " lists");
    }
}

cv::Mat LineNetwork::logShares(const cv::Mat& crop)
{
    if (crop.type() != CV_8UC1 || crop.rows != height_px || crop.cols < 1)
        throw std::invalid_argument("LineNetwork: the crop must be CV_8UC1, 48 pixels high");
    cv::Mat value;
    crop.convertTo(value, CV_32F);
    cv::Scalar mean, deviation;
    cv::meanStdDev(value, mean, deviation);
    value = (value - mean[0]) / std::max(deviation[0], 0.25);
    const int wide = (crop.cols + room_px + width_unit_px - 1) / width_unit_px * width_unit_px;
    cv::copyMakeBorder(value, value, 0, 0, 0, wide - crop.cols, cv::BORDER_REPLICATE);
    cv::Mat shares = forward(value);
    const int steps = std::min(shares.rows, (crop.cols + room_px + step_px - 1) / step_px);
    return shares.rowRange(0, steps).clone();
}

// Logits (1, classes, 1, steps) as log probabilities, a row a step.
cv::Mat LineNetwork::forward(const cv::Mat& padded)
{
    net_.setInput(cv::dnn::blobFromImage(padded));
    const cv::Mat logits = net_.forward();
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
