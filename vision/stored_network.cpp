#include "vision/stored_network.h"

#include <vector>

#include <zlib.h>
#include <opencv2/core/utils/logger.hpp>

#include "vision/sha256.h"
#include "vision/weights_file.h"

namespace vision {

namespace {

constexpr std::size_t most_bytes = 256u << 20;  // of the network, inflated

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

StoredNetwork loadNetwork(const std::filesystem::path& folder, const std::string& name,
                          const std::string& without,
                          const std::function<void(cv::dnn::Net&)>& trial)
{
    const std::vector<unsigned char> bytes = checkedWeights(folder, name, without);
    StoredNetwork stored;
    stored.sha256 = sha256Hex(bytes);
    const QuietOpenCv quiet;
    try {
        const std::vector<unsigned char> network = inflated(bytes);
        stored.net =
            cv::dnn::readNetFromONNX(reinterpret_cast<const char*>(network.data()), network.size());
        stored.net.enableFusion(false);
        trial(stored.net);
    } catch (const cv::Exception&) {
        throw unusableWeights(folder / name, "is no network that can be run", without);
    }
    return stored;
}

}  // namespace vision
