#include "tests/bench/labelled_photos.h"

#include <algorithm>
#include <fstream>
#include <sstream>

#include <opencv2/imgproc.hpp>

#include "tests/bench/drawn_set.h"
#include "tests/support/drawn_marks.h"

namespace bench {

namespace {

namespace fs = std::filesystem;

vision::Quad quadFrom(const std::string& field)
{
    vision::Quad quad;
    std::istringstream in(field);
    char comma = 0, semicolon = 0;
    for (cv::Point2f& corner : quad)
        in >> corner.x >> comma >> corner.y >> semicolon;
    return quad;
}

void eachLabelled(const fs::path& folder, const PhotoTask& task)
{
    std::ifstream in(folder / "labels.tsv");
    std::string row;
    while (std::getline(in, row)) {
        std::istringstream fields(row);
        std::string name, passed_over, text, corners;
        std::getline(fields, name, '\t');
        for (int i = 0; i < 3; ++i)
            std::getline(fields, passed_over, '\t');
        LabelledPhoto photo;
        photo.name = name;
        while (std::getline(fields, text, '\t') && std::getline(fields, corners, '\t'))
            photo.lines.push_back({text, quadFrom(corners)});
        photo.photo = vision::loadPhoto(folder / name);
        task(photo);
    }
}

}  // namespace

LabelledPhoto labelled(const synthetic::DrawnPhoto& drawn, std::string name)
{
    LabelledPhoto photo;
    photo.name = std::move(name);
    photo.photo.pixels = drawn.pixels;
    for (const synthetic::StampTruth& stamp : drawn.stamps)
        for (const synthetic::LineTruth& line : stamp.lines)
            photo.lines.push_back({line.text, line.corners});
    return photo;
}

void eachDrawnPhoto(std::uint32_t seed, int count, const PhotoTask& task)
{
    for (int i = 0; i < count; ++i) {
        const std::uint32_t at = seed + static_cast<std::uint32_t>(i);
        for (const Wear wear : {Wear::Easy, Wear::Medium, Wear::Hard})
            task(labelled(synthetic::drawPhoto(stampedScene(at, wear)),
                          nameOf(wear) + std::to_string(at)));
        if (i % 3 == 0)
            task(labelled(synthetic::drawPhoto(bareScene(at)), "bare" + std::to_string(at)));
    }
}

void eachOtherMark(std::uint32_t seed, int count, const PhotoTask& task)
{
    for (const double contrast : {0.10, 0.15, 0.20, 0.28, 0.40})
        for (const DrawnMark& mark : otherMarks(contrast, seed, static_cast<std::size_t>(count)))
            task(labelled(synthetic::drawPhoto(mark.scene), mark.id));
}

void eachPhotoOf(const fs::path& folder, const PhotoTask& task)
{
    if (fs::exists(folder / "labels.tsv")) {
        eachLabelled(folder, task);
        return;
    }
    std::vector<fs::path> files;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
        const std::string ending = entry.path().extension().string();
        if (ending == ".jpg" || ending == ".jpeg" || ending == ".png")
            files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    for (const fs::path& file : files)
        task({file.filename().string(), vision::loadPhoto(file), {}});
}

vision::Quad laidPlace(const vision::Quad& corners)
{
    const auto side = [&](std::size_t from, std::size_t to) {
        return static_cast<float>(cv::norm(corners[to] - corners[from]));
    };
    const float height = (side(0, 3) + side(1, 2)) / 2, width = (side(0, 1) + side(3, 2)) / 2;
    const float rim = height / 4;
    return {{{rim, rim}, {rim + width, rim}, {rim + width, rim + height}, {rim, rim + height}}};
}

cv::Mat laidStraight(const cv::Mat& pixels, const vision::Quad& corners)
{
    const vision::Quad place = laidPlace(corners);
    cv::Mat laid;
    cv::warpPerspective(pixels, laid, cv::getPerspectiveTransform(corners.data(), place.data()),
                        {cvCeil(place[2].x + place[0].x), cvCeil(place[2].y + place[0].y)},
                        cv::INTER_CUBIC, cv::BORDER_REPLICATE);
    return laid;
}

double overlapOf(const vision::Quad& a, const vision::Quad& b)
{
    const std::vector<cv::Point2f> p(a.begin(), a.end()), q(b.begin(), b.end());
    std::vector<cv::Point2f> common;
    const double area = cv::intersectConvexConvex(p, q, common);
    return area / std::max(1.0, cv::contourArea(p) + cv::contourArea(q) - area);
}

}  // namespace bench
