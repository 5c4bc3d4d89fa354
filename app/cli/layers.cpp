#include "app/cli/layers.h"

#include <fstream>
#include <system_error>
#include <utility>
#include <vector>

#include <opencv2/imgcodecs.hpp>

#include "vision/image_error.h"

namespace cli {

namespace {

void writePng(const std::filesystem::path& file, const cv::Mat& grey)
{
    std::vector<uchar> bytes;
    cv::imencode(".png", grey, bytes);
    std::ofstream stream(file, std::ios::binary);
    stream.write(reinterpret_cast<const char*>(bytes.data()),
                 static_cast<std::streamsize>(bytes.size()));
    if (!stream.flush())
        throw vision::ImageError(file.string() +
                                 " cannot be written; give --layers a folder that may be written "
                                 "and has room");
}

}  // namespace

LayerFolder::LayerFolder(std::filesystem::path folder) : folder_(std::move(folder))
{
}

std::string LayerFolder::freshStem(const std::filesystem::path& photo)
{
    const std::string stem = photo.stem().string();
    std::string fresh = stem;
    for (int number = 2; !used_.insert(fresh).second; ++number)
        fresh = stem + "-" + std::to_string(number);
    return fresh;
}

void LayerFolder::write(const std::filesystem::path& photo, const flow::Examination& examination)
{
    if (folder_.empty())
        return;
    std::error_code trouble;
    std::filesystem::create_directories(folder_, trouble);
    const std::string stem = freshStem(photo);
    for (std::size_t i = 0; i < examination.stamps.size(); ++i)
        for (const vision::Layer& layer : examination.stamps[i].enhanced.layers)
            writePng(
                folder_ / (stem + "-stamp" + std::to_string(i + 1) + "-" + layer.name + ".png"),
                layer.grey);
}

}  // namespace cli
