#include <algorithm>
#include <atomic>
#include <future>
#include <iomanip>
#include <iterator>
#include <sstream>
#include <stdexcept>

#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>

#include "tests/bench/bench_sets.h"
#include "tests/support/drawn_marks.h"

namespace bench {

namespace {

namespace fs = std::filesystem;

void writePng(const fs::path& file, const cv::Mat& pixels)
{
    // Speed matters more than size: the files live as long as the run.
    if (!cv::imwrite(file.string(), pixels, {cv::IMWRITE_PNG_COMPRESSION, 1}))
        throw std::runtime_error("cannot write " + file.string() + ": is the disk full?");
}

Picture lineOf(const synthetic::DrawnPhoto& drawn, const synthetic::LineTruth& line,
               const fs::path& file)
{
    writePng(file, laidStraight(drawn.pixels, line.corners));
    return {file, {}, {{line.text, laidPlace(line.corners)}}, true, {}};
}

struct DrawnPictures {
    Picture photo;
    std::vector<Picture> lines;
};

DrawnPictures draw(const DrawnMark& mark, const fs::path& folder)
{
    const synthetic::DrawnPhoto drawn = synthetic::drawPhoto(mark.scene);
    DrawnPictures pictures;
    pictures.photo.file = folder / (mark.id + ".png");
    writePng(pictures.photo.file, drawn.pixels);
    for (const synthetic::StampTruth& stamp : drawn.stamps)
        for (const synthetic::LineTruth& line : stamp.lines) {
            pictures.photo.lines.push_back({line.text, line.corners});
            const std::string name =
                mark.id + "-line" + std::to_string(pictures.photo.lines.size()) + ".png";
            pictures.lines.push_back(lineOf(drawn, line, folder / name));
        }
    return pictures;
}

std::string inWriting(double contrast)
{
    std::ostringstream text;
    text << std::fixed << std::setprecision(2) << contrast;
    return text.str();
}

// By two threads.
std::vector<DrawnPictures> drawAll(const std::vector<DrawnMark>& marks, const fs::path& folder)
{
    std::vector<DrawnPictures> drawn(marks.size());
    std::atomic<std::size_t> next = 0;
    const auto work = [&] {
        for (std::size_t i = next++; i < marks.size(); i = next++)
            drawn[i] = draw(marks[i], folder);
    };
    auto one = std::async(std::launch::async, work), other = std::async(std::launch::async, work);
    one.get();
    other.get();
    return drawn;
}

BenchSet linesOf(const std::vector<DrawnPictures>& drawn, std::string name, std::string title)
{
    BenchSet set{std::move(name), std::move(title), {}, true};
    for (const DrawnPictures& pictures : drawn)
        set.pictures.insert(set.pictures.end(), pictures.lines.begin(), pictures.lines.end());
    return set;
}

}  // namespace

std::vector<BenchSet> drawnSets(double contrast, const fs::path& folder, std::size_t first)
{
    std::vector<DrawnMark> marks = drawnMarks(contrast);
    if (marks.size() > first)
        marks.resize(first);
    std::vector<DrawnPictures> drawn = drawAll(marks, folder);
    const std::string at = inWriting(contrast);
    BenchSet photos{"drawn-" + at, "Drawn marks, contrast " + at, {}, false};
    for (DrawnPictures& pictures : drawn)
        photos.pictures.push_back(std::move(pictures.photo));
    return {photos, linesOf(drawn, "drawn-lines-" + at, "Lines of drawn marks, contrast " + at)};
}

BenchSet moreLines(double contrast, const fs::path& folder, std::size_t first)
{
    constexpr std::uint32_t first_seed = 600000;
    constexpr std::size_t enough = 400;  // for 5,000 letters and digits
    const std::vector<DrawnMark> marks = otherMarks(contrast, first_seed, std::min(first, enough));
    const std::string at = inWriting(contrast);
    return linesOf(drawAll(marks, folder), "drawn-more-" + at,
                   "Lines of more drawn marks, contrast " + at);
}

}  // namespace bench
