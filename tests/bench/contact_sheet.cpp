#include "tests/bench/contact_sheet.h"

#include <algorithm>
#include <cmath>
#include <iomanip>
#include <sstream>
#include <stdexcept>

#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>

#include "tests/bench/scoring.h"

namespace bench {

namespace {

constexpr int tile_width = 480, picture_height = 84, tile_height = picture_height + 46;
constexpr std::size_t tiles_across = 3, tiles_down = 10;

double length(const cv::Point2f& side)
{
    return std::hypot(side.x, side.y);
}

// The place laid straight, with a third of its height around it, fitted into a tile.
cv::Mat fittedInTile(const cv::Mat& photo, const vision::Quad& place)
{
    const double width = std::max(1.0, length(place[1] - place[0]));
    const double height = std::max(1.0, length(place[3] - place[0]));
    const double rim = height / 3;
    const double scale =
        std::min((tile_width - 10) / (width + 2 * rim), picture_height / (height + 2 * rim));
    const auto near = static_cast<float>(scale * rim);
    const auto right = static_cast<float>(scale * (rim + width));
    const auto bottom = static_cast<float>(scale * (rim + height));
    const vision::Quad to{{{near, near}, {right, near}, {right, bottom}, {near, bottom}}};
    const cv::Size size(std::max(1, cvRound(scale * (width + 2 * rim))),
                        std::max(1, cvRound(scale * (height + 2 * rim))));
    cv::Mat laid;
    cv::warpPerspective(photo, laid, cv::getPerspectiveTransform(place.data(), to.data()), size,
                        cv::INTER_AREA, cv::BORDER_REPLICATE);
    return laid;
}

// The drawing functions know ASCII only.
std::string drawable(const std::string& text)
{
    std::string result;
    for (const char c : text)
        if (static_cast<unsigned char>(c) < 0x80)
            result += c;
        else if ((static_cast<unsigned char>(c) & 0xC0) != 0x80)
            result += '?';
    return result;
}

cv::Mat tileOf(const cv::Mat& photo, const std::string& name, const LabelledLine* truth,
               const ReadLine* read)
{
    cv::Mat tile(tile_height, tile_width, CV_8UC3, cv::Scalar::all(255));
    const cv::Mat laid = fittedInTile(photo, truth != nullptr ? truth->corners : read->corners);
    laid.copyTo(tile(cv::Rect({4, 2}, laid.size()) & cv::Rect(0, 0, tile_width, tile_height)));
    std::ostringstream below;
    below << "read  ";
    if (read == nullptr)
        below << "-";
    else
        below << drawable(models::plainText(read->line)) << "   " << std::fixed
              << std::setprecision(2) << models::lineCertainty(read->line);
    const auto write = [&](const std::string& text, int y, const cv::Scalar& colour) {
        cv::putText(tile, text, {4, y}, cv::FONT_HERSHEY_SIMPLEX, 0.45, colour, 1, cv::LINE_AA);
    };
    write("true  " + (truth != nullptr ? drawable(truth->text) : "-"), picture_height + 18,
          {0, 0, 0});
    write(below.str(), picture_height + 36, {0, 0, 200});
    cv::putText(tile, name, {tile_width - 150, picture_height + 18}, cv::FONT_HERSHEY_SIMPLEX, 0.35,
                cv::Scalar::all(140), 1, cv::LINE_AA);
    return tile;
}

std::vector<cv::Mat> tilesOf(const Picture& picture, const ReadPicture& read)
{
    std::vector<Verdict> wrong = judge(picture, read);
    std::erase_if(wrong, [](const Verdict& verdict) { return verdict.right; });
    if (wrong.empty())
        return {};
    const vision::Photo photo = photoOf(picture);
    std::vector<cv::Mat> tiles;
    for (const Verdict& verdict : wrong)
        tiles.push_back(tileOf(photo.pixels, picture.file.stem().string(),
                               verdict.truth ? &picture.lines[*verdict.truth] : nullptr,
                               verdict.read ? &read.lines[*verdict.read] : nullptr));
    return tiles;
}

void writeSheet(const std::filesystem::path& file, const std::vector<cv::Mat>& tiles)
{
    const auto used_rows = static_cast<int>((tiles.size() + tiles_across - 1) / tiles_across);
    cv::Mat sheet(used_rows * tile_height, static_cast<int>(tiles_across) * tile_width, CV_8UC3,
                  cv::Scalar::all(255));
    for (std::size_t i = 0; i < tiles.size(); ++i)
        tiles[i].copyTo(sheet(cv::Rect(static_cast<int>(i % tiles_across) * tile_width,
                                       static_cast<int>(i / tiles_across) * tile_height, tile_width,
                                       tile_height)));
    if (!cv::imwrite(file.string(), sheet))
        throw std::runtime_error("cannot write " + file.string());
}

}  // namespace

std::size_t writeContactSheets(const std::filesystem::path& folder, const std::string& name,
                               const std::vector<Picture>& pictures,
                               const std::vector<ReadPicture>& reads)
{
    std::filesystem::create_directories(folder);
    std::vector<cv::Mat> tiles;
    std::size_t shown = 0, sheets = 0;
    const auto flush = [&] {
        writeSheet(folder / (name + "-" + std::to_string(++sheets) + ".jpg"), tiles);
        tiles.clear();
    };
    for (std::size_t i = 0; i < pictures.size(); ++i)
        for (cv::Mat& tile : tilesOf(pictures[i], reads[i])) {
            tiles.push_back(std::move(tile));
            ++shown;
            if (tiles.size() == tiles_across * tiles_down)
                flush();
        }
    if (!tiles.empty())
        flush();
    return shown;
}

}  // namespace bench
