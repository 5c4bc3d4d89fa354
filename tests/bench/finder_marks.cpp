// How well marks are found in drawn photographs of the sample levels, at any angle: by the finder
// network and by the shapes of letters, side by side, and what is read in the end.
//   finder_marks [--marks N] [--seed S] [--bare FOLDER]... [--sheet FOLDER]
// N marks a level (100). Bare folders hold pictures without a mark. With a sheet, the lines that
// were not read exactly behind the network's finder are listed, and the folder gets a picture of
// each such mark with what was found.

#include <algorithm>
#include <atomic>
#include <chrono>
#include <future>
#include <iomanip>
#include <iostream>
#include <mutex>
#include <numeric>
#include <optional>
#include <sstream>
#include <stdexcept>

#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>

#include "tests/bench/bench_sets.h"
#include "tests/bench/level_photos.h"
#include "tests/bench/mark_verdict.h"
#include "tests/bench/scoring.h"

namespace {

namespace fs = std::filesystem;

struct Settings {
    std::uint32_t marks = 100, seed = 880000;
    std::vector<fs::path> bare;
    fs::path sheet;
};

// What one finder, and the whole way behind it, made of one photo.
struct Seen {
    bench::MarkVerdict verdict;
    bench::ReadPicture read;
    std::optional<double> up_off_deg;  // of the outline that covers most of the mark
    double find_s = 0, whole_s = 0;
};

struct Mark {
    bench::Picture picture;  // its lines; there is no file
    bool either_way_up = false;
    Seen network, classical;
};

double secondsSince(std::chrono::steady_clock::time_point start)
{
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

Seen look(const vision::Photo& photo, const synthetic::StampTruth& truth, flow::Engines& engines)
{
    Seen seen;
    const auto start = std::chrono::steady_clock::now();
    const auto outlines = engines.finder.find(photo);
    seen.find_s = secondsSince(start);
    seen.verdict = bench::judgeOutlines(truth, photo.pixels.size(), outlines);
    const auto reading = std::chrono::steady_clock::now();
    for (std::size_t i = 0; i < outlines.size(); ++i) {
        const flow::StampExamination stamp = flow::examineStamp(photo, outlines[i], engines);
        bench::addLines(stamp, seen.read);
        if (i == seen.verdict.best)
            seen.up_off_deg =
                std::abs(std::remainder(stamp.enhanced.rectified.up_deg - truth.up_deg, 360));
    }
    seen.whole_s = seen.find_s + secondsSince(reading);
    return seen;
}

struct BothEngines {
    flow::Engines network = flow::makeEngines(WEFTMARK_SOURCE_DIR "/models/register");
    flow::Engines classical = flow::makeEngines(WEFTMARK_SOURCE_DIR "/models/register");

    BothEngines()
    {
        if (!network.finder.hasNetwork())
            throw std::runtime_error(network.troubles.front());
        classical.finder = {};
    }
};

void writeSheet(const fs::path& folder, const std::string& name, const vision::Photo& photo,
                flow::Engines& engines)
{
    cv::Mat shown = photo.pixels.clone();
    for (const vision::StampOutline& outline : engines.finder.find(photo))
        for (const vision::Quad& line : outline.lines) {
            const std::vector<cv::Point> corners(line.begin(), line.end());
            cv::polylines(shown, corners, true, {0, 0, 255}, 2);
        }
    fs::create_directories(folder);
    cv::imwrite((folder / (name + ".jpg")).string(), shown);
}

std::string linesNotRead(const Mark& mark)
{
    std::ostringstream out;
    for (const bench::Verdict& verdict : bench::judge(mark.picture, mark.network.read)) {
        if (verdict.right)
            continue;
        out << "  " << (verdict.truth ? mark.picture.lines[*verdict.truth].text : "(nothing)")
            << "  read as  "
            << (verdict.read ? models::plainText(mark.network.read.lines[*verdict.read].line)
                             : "(nothing)")
            << '\n';
    }
    return out.str();
}

Mark lookAtMark(SampleLevel level, std::uint32_t seed, BothEngines& engines,
                const Settings& settings)
{
    const synthetic::DrawnPhoto drawn = bench::levelPhoto(level, seed);
    const synthetic::StampTruth& truth = drawn.stamps.front();
    vision::Photo photo;
    photo.pixels = drawn.pixels;
    Mark mark;
    std::vector<std::string> lines;
    for (const synthetic::LineTruth& line : truth.lines) {
        mark.picture.lines.push_back({line.text, line.corners});
        lines.push_back(line.text);
    }
    mark.either_way_up = bench::readsBothWays(lines);
    mark.network = look(photo, truth, engines.network);
    mark.classical = look(photo, truth, engines.classical);
    if (const std::string not_read = linesNotRead(mark);
        !settings.sheet.empty() && !(not_read.empty() && mark.network.verdict.found())) {
        const std::string name = folderOf(level) + "-" + std::to_string(seed);
        writeSheet(settings.sheet, name, photo, engines.network);
        std::cerr << name + (mark.network.verdict.found() ? "\n" : ", not found\n") + not_read;
    }
    return mark;
}

// By two threads, each with engines of its own.
std::vector<Mark> lookAtMarks(SampleLevel level, const Settings& settings)
{
    std::vector<Mark> marks(settings.marks);
    std::atomic<std::uint32_t> next = 0;
    const auto work = [&] {
        BothEngines engines;
        for (std::uint32_t i = next++; i < settings.marks; i = next++)
            marks[i] = lookAtMark(level, settings.seed + i, engines, settings);
    };
    auto one = std::async(std::launch::async, work), other = std::async(std::launch::async, work);
    one.get();
    other.get();
    return marks;
}

double percent(double part, double whole)
{
    return 100 * part / std::max(1.0, whole);
}

double median(std::vector<double> values)
{
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

void report(const std::string& level, const std::string& name, const std::vector<Mark>& marks,
            Seen Mark::*finder)
{
    double found = 0, every = 0, covered = 0, strays = 0, up = 0, up_of = 0;
    std::vector<bench::Picture> pictures;
    std::vector<bench::ReadPicture> reads;
    std::vector<double> find_s, whole_s;
    for (const Mark& mark : marks) {
        const Seen& seen = mark.*finder;
        found += seen.verdict.found();
        every += seen.verdict.every_letter && seen.verdict.tight;
        covered += seen.verdict.covered;
        strays += static_cast<double>(seen.verdict.false_marks);
        if (!mark.either_way_up && seen.up_off_deg) {
            up_of += 1;
            up += *seen.up_off_deg < 30;
        }
        pictures.push_back(mark.picture);
        reads.push_back(seen.read);
        find_s.push_back(seen.find_s);
        whole_s.push_back(seen.whole_s);
    }
    const double count = static_cast<double>(marks.size());
    const bench::Score score = bench::scoreOf(pictures, reads);
    std::cout << std::fixed << std::setprecision(1) << std::left << std::setw(8) << level
              << std::setw(11) << name << std::right << std::setw(7) << percent(found, count)
              << std::setw(7) << percent(every, count) << std::setw(9) << percent(covered, count)
              << std::setprecision(2) << std::setw(8) << strays / count << std::setprecision(1)
              << std::setw(7) << percent(up, up_of) << std::setw(7)
              << percent(static_cast<double>(score.exact), static_cast<double>(score.lines))
              << std::setw(7) << score.misled << std::setprecision(2) << std::setw(8)
              << median(find_s) << std::setw(8) << median(whole_s) << '\n';
}

void reportMarks(const Settings& settings)
{
    std::cout << "level   finder      found  every  covered  false     up  exact misled  find s"
                 " whole s\n";
    for (const SampleLevel level : {SampleLevel::Easy, SampleLevel::Medium, SampleLevel::Hard}) {
        const std::vector<Mark> marks = lookAtMarks(level, settings);
        report(folderOf(level), "network", marks, &Mark::network);
        report(folderOf(level), "classical", marks, &Mark::classical);
        for (const Mark& mark : marks)
            if (mark.either_way_up) {
                std::cout << "  either way up:";
                for (const bench::LabelledLine& line : mark.picture.lines)
                    std::cout << " / " << line.text;
                std::cout << '\n';
            }
        std::cout << std::flush;
    }
}

// Pictures without a mark: outlines a picture, and how many have a line of certainty 0.5 or more.
void reportBare(const Settings& settings)
{
    const bench::BenchSet set = bench::bareSet(settings.bare);
    BothEngines engines;
    for (flow::Engines* one : {&engines.network, &engines.classical}) {
        std::size_t outlines = 0, misled = 0;
        for (const bench::Picture& picture : set.pictures) {
            const vision::Photo photo = bench::photoOf(picture);
            outlines += one->finder.find(photo).size();
            const bench::ReadPicture read = bench::readMarks(photo, *one);
            misled += std::any_of(read.lines.begin(), read.lines.end(), [](const auto& line) {
                return models::lineCertainty(line.line) >= 0.5;
            });
        }
        std::cout << "bare, " << (one == &engines.network ? "network" : "classical") << ": "
                  << set.pictures.size() << " pictures, " << outlines << " outlines, " << misled
                  << " pictures with a line of 0.5 or more\n"
                  << std::flush;
    }
}

Settings settingsFrom(const std::vector<std::string>& arguments)
{
    Settings settings;
    for (std::size_t i = 0; i + 1 < arguments.size(); i += 2) {
        const std::string &name = arguments[i], &value = arguments[i + 1];
        if (name == "--marks")
            settings.marks = static_cast<std::uint32_t>(std::stoul(value));
        else if (name == "--seed")
            settings.seed = static_cast<std::uint32_t>(std::stoul(value));
        else if (name == "--bare")
            settings.bare.emplace_back(value);
        else if (name == "--sheet")
            settings.sheet = value;
        else
            throw std::invalid_argument("not understood: " + name);
    }
    if (arguments.size() % 2 != 0)
        throw std::invalid_argument("not understood: " + arguments.back());
    return settings;
}

}  // namespace

int main(int argc, char** argv)
{
    try {
        const Settings settings = settingsFrom({argv + 1, argv + argc});
        cv::setNumThreads(1);  // two photos are looked at at a time
        if (settings.marks > 0)
            reportMarks(settings);
        if (!settings.bare.empty())
            reportBare(settings);
        return 0;
    } catch (const std::invalid_argument& error) {
        std::cerr << error.what() << '\n';
        return 2;
    } catch (const std::exception& error) {
        std::cerr << error.what() << '\n';
        return 3;
    }
}
