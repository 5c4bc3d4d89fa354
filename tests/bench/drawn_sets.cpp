#include <algorithm>
#include <atomic>
#include <future>
#include <stdexcept>

#include <opencv2/imgcodecs.hpp>

#include "tests/bench/bench_sets.h"
#include "tests/bench/drawn_set.h"

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

constexpr std::uint32_t first_seed = 90000, count = 100;

}  // namespace

std::vector<std::string> drawnSetNames()
{
    std::vector<std::string> names;
    for (const Wear wear : {Wear::Easy, Wear::Medium, Wear::Hard})
        names.push_back(std::string("drawn-") + nameOf(wear));
    return names;
}

BenchSet drawnSet(const std::string& name, const fs::path& folder, std::size_t first)
{
    const std::vector<std::string> names = drawnSetNames();
    const auto found = std::find(names.begin(), names.end(), name);
    if (found == names.end())
        throw std::invalid_argument("there is no drawn set " + name);
    const auto wear = static_cast<Wear>(found - names.begin());
    BenchSet set{name, std::string("Drawn marks, ") + nameOf(wear), {}, false};
    set.pictures.resize(std::min<std::size_t>(first, count));
    std::atomic<std::uint32_t> next = 0;
    const auto work = [&] {
        for (std::uint32_t i = next++; i < set.pictures.size(); i = next++)
            set.pictures[i] = written(synthetic::drawPhoto(stampedScene(first_seed + i, wear)),
                                      folder / (name + "-" + std::to_string(i) + ".png"));
    };
    auto one = std::async(std::launch::async, work), other = std::async(std::launch::async, work);
    one.get();
    other.get();
    return set;
}

}  // namespace bench
