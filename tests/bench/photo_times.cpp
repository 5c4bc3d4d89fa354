// What one photograph costs, all stages from the file to candidates: a drawn mark of three lines
// photographed at 2, 12 and 24 megapixels, as JPEG files.
//   photo_times [--repeats N] [FILE...]     N times each (7); files: those instead
// Seconds are medians: by the clock, and of the processor (all threads together). On a machine with
// other work, whose load is told, the clock runs ahead of what the work takes.

#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <iomanip>
#include <iostream>
#include <map>
#include <thread>

#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>

#include "app/flow/examine.h"
#include "tests/support/synthetic_stamp.h"
#include "tests/support/temporary_folder.h"

namespace {

namespace fs = std::filesystem;

// A canvas bag with a mark in its middle, seen from a little aside, at 24 megapixels: drawn in a
// third of that size a side, enlarged, with a camera's noise.
cv::Mat drawnPhotograph()
{
    synthetic::SceneOptions scene;
    scene.seed = 24;
    scene.size_px = {2000, 1333};
    scene.piece.material = synthetic::Material::Canvas;
    scene.piece.width_px = 860;
    scene.pitch_deg = 6;
    synthetic::StampOptions stamp;
    stamp.text.lines = {"SALTMERE WORKS", "SIZE 3", "JULY 1938"};
    stamp.text.letter_px = 43;
    stamp.contrast = 0.3;
    stamp.turn_deg = 8;
    scene.stamps = {stamp};
    cv::Mat photo;
    cv::resize(synthetic::drawPhoto(scene).pixels, photo, {6000, 4000}, 0, 0, cv::INTER_CUBIC);
    cv::Mat noise(photo.size(), CV_16SC3), sum;
    cv::RNG(24).fill(noise, cv::RNG::NORMAL, 0, 3);
    cv::add(photo, noise, sum, {}, CV_8UC3);
    return sum;
}

std::vector<fs::path> drawnFiles(const fs::path& folder)
{
    const cv::Mat whole = drawnPhotograph();
    std::vector<fs::path> files;
    for (const double megapixels : {2.0, 12.0, 24.0}) {
        const double scale = std::sqrt(megapixels * 1e6 / static_cast<double>(whole.total()));
        cv::Mat photo = whole;
        if (scale < 1)
            cv::resize(whole, photo, {}, scale, scale, cv::INTER_AREA);
        files.push_back(folder / (std::to_string(std::lround(megapixels)) + ".jpg"));
        if (!cv::imwrite(files.back().string(), photo, {cv::IMWRITE_JPEG_QUALITY, 92}))
            throw std::runtime_error("cannot write " + files.back().string());
    }
    return files;
}

double clockSeconds()
{
    return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch())
        .count();
}

double processorSeconds()
{
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    const auto seconds = [](const timeval& time) {
        return static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
    };
    return seconds(used.ru_utime) + seconds(used.ru_stime);
}

double median(std::vector<double> values)
{
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

// The seconds of each stage, as examinePhoto tells when one begins; stamps are one stage.
class Stages {
public:
    void begin(const std::string& stage)
    {
        end();
        now_ = stage.starts_with("reading stamp") ? "reading" : stage;
        since_ = clockSeconds();
    }
    void end()
    {
        if (!now_.empty())
            seconds_[now_] += clockSeconds() - since_;
        now_.clear();
    }
    double of(const std::string& stage) const
    {
        const auto found = seconds_.find(stage);
        return found == seconds_.end() ? 0 : found->second;
    }

private:
    std::map<std::string, double> seconds_;
    std::string now_;
    double since_ = 0;
};

void report(const fs::path& file, int repeats, flow::Engines& engines)
{
    std::vector<double> clock, processor, loading, finding, reading;
    flow::Examination seen;
    for (int i = 0; i < repeats; ++i) {
        Stages stages;
        const double clock_from = clockSeconds(), processor_from = processorSeconds();
        seen = flow::examinePhoto(file, engines, {}, {},
                                  [&](const std::string& stage, double) { stages.begin(stage); });
        stages.end();
        clock.push_back(clockSeconds() - clock_from);
        processor.push_back(processorSeconds() - processor_from);
        loading.push_back(stages.of("loading"));
        finding.push_back(stages.of("looking for stamps"));
        reading.push_back(stages.of("reading"));
    }
    std::size_t lines = 0;
    for (const flow::StampExamination& stamp : seen.stamps)
        lines += stamp.proposal.lines.size();
    std::cout << std::fixed << std::setprecision(1) << std::setw(10)
              << static_cast<double>(seen.photo.pixels.total()) / 1e6 << std::setw(6)
              << seen.stamps.size() << std::setw(6) << lines << std::setprecision(2);
    for (const auto& seconds : {clock, processor, loading, finding, reading})
        std::cout << std::setw(10) << median(seconds);
    std::cout << "  " << file.filename().string() << '\n' << std::flush;
}

void reportLoad()
{
    double load = 0;
    getloadavg(&load, 1);
    std::cout << "load " << std::fixed << std::setprecision(1) << load << ", "
              << std::thread::hardware_concurrency() << " cores\n";
}

}  // namespace

int main(int argc, char** argv)
{
    try {
        int repeats = 7;
        std::vector<fs::path> files;
        for (int i = 1; i < argc; ++i)
            if (argv[i] == std::string("--repeats") && i + 1 < argc)
                repeats = std::max(1, std::atoi(argv[++i]));
            else
                files.emplace_back(argv[i]);
        const support::TemporaryFolder folder;
        if (files.empty())
            files = drawnFiles(folder.path());
        flow::Engines engines = flow::makeEngines(WEFTMARK_SOURCE_DIR "/models/register");
        reportLoad();
        std::cout << "megapixels marks lines   clock s  proc. s   loading   finding   reading\n";
        for (const fs::path& file : files)
            report(file, repeats, engines);
        reportLoad();
        return 0;
    } catch (const std::exception& error) {
        std::cerr << error.what() << '\n';
        return 3;
    }
}
