#include <algorithm>
#include <atomic>
#include <future>
#include <iomanip>
#include <sstream>
#include <stdexcept>

#include <opencv2/imgcodecs.hpp>

#include "tests/bench/bench_sets.h"
#include "tests/support/drawn_marks.h"

namespace bench {

namespace {

namespace fs = std::filesystem;

Picture written(const synthetic::DrawnPhoto& drawn, const fs::path& file)
{
    // Speed matters more than size: the files live as long as the run.
    if (!cv::imwrite(file.string(), drawn.pixels, {cv::IMWRITE_PNG_COMPRESSION, 1}))
        throw std::runtime_error("cannot write " + file.string() + ": is the disk full?");
    Picture picture;
    picture.file = file;
    for (const synthetic::StampTruth& stamp : drawn.stamps)
        for (const synthetic::LineTruth& line : stamp.lines)
            picture.lines.push_back({line.text, line.corners});
    return picture;
}

std::string nameAt(double contrast)
{
    std::ostringstream name;
    name << "drawn-" << std::fixed << std::setprecision(2) << contrast;
    return name.str();
}

}  // namespace

std::vector<std::string> drawnSetNames()
{
    std::vector<std::string> names;
    for (const double contrast : drawnMarkContrasts())
        names.push_back(nameAt(contrast));
    return names;
}

BenchSet drawnSet(const std::string& name, const fs::path& folder, std::size_t first)
{
    const std::vector<double> contrasts = drawnMarkContrasts();
    const auto contrast = std::find_if(contrasts.begin(), contrasts.end(),
                                       [&](double at) { return nameAt(at) == name; });
    if (contrast == contrasts.end())
        throw std::invalid_argument("there is no drawn set " + name);
    std::vector<DrawnMark> marks = drawnMarks(*contrast);
    if (marks.size() > first)
        marks.resize(first);
    BenchSet set{name, "Drawn marks, contrast " + name.substr(name.find('-') + 1), {}, false};
    set.pictures.resize(marks.size());
    std::atomic<std::size_t> next = 0;
    const auto work = [&] {
        for (std::size_t i = next++; i < marks.size(); i = next++)
            set.pictures[i] =
                written(synthetic::drawPhoto(marks[i].scene), folder / (marks[i].id + ".png"));
    };
    auto one = std::async(std::launch::async, work), other = std::async(std::launch::async, work);
    one.get();
    other.get();
    return set;
}

}  // namespace bench
