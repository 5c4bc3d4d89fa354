// What reading one line costs on one core, after start-up: every line of drawn marks cropped as a
// person would, through the whole way of `weftmark read --line`.
//   line_speed [--marks N] [--seed S] [CONTRAST ...]     (40, 700000; 0.15 0.25 0.40)

#include <algorithm>
#include <chrono>
#include <cmath>
#include <iomanip>
#include <iostream>
#include <string>
#include <vector>

#include <opencv2/core.hpp>
#include <opencv2/core/ocl.hpp>
#include <opencv2/imgproc.hpp>

#include "app/flow/examine.h"
#include "tests/support/drawn_marks.h"

namespace {

struct Settings {
    std::size_t marks = 40;
    std::uint32_t seed = 700000;
    std::vector<double> contrasts;
};

Settings settingsFrom(int argc, char** argv)
{
    Settings settings;
    for (int i = 1; i < argc; ++i) {
        const std::string name = argv[i];
        if (name == "--marks" && i + 1 < argc)
            settings.marks = std::stoul(argv[++i]);
        else if (name == "--seed" && i + 1 < argc)
            settings.seed = static_cast<std::uint32_t>(std::stoul(argv[++i]));
        else
            settings.contrasts.push_back(std::stod(name));
    }
    if (settings.contrasts.empty())
        settings.contrasts = drawnMarkContrasts();
    return settings;
}

constexpr double most_tilt_deg = 35;  // what --line promises to read

double tiltOf(const synthetic::LineTruth& line)
{
    const auto along = line.corners[1] - line.corners[0];
    return std::atan2(along.y, along.x) * 180 / CV_PI;
}

// The upright box of a line, a fifth of its height wider on each side.
cv::Mat cropOf(const synthetic::LineTruth& line, const cv::Mat& pixels)
{
    const std::vector<cv::Point2f> corners(line.corners.begin(), line.corners.end());
    cv::Rect box = cv::boundingRect(corners);
    const int margin = box.height / 5;
    box = cv::Rect(box.x - margin, box.y - margin, box.width + 2 * margin, box.height + 2 * margin);
    return pixels(box & cv::Rect(0, 0, pixels.cols, pixels.rows)).clone();
}

double millisecondsOf(const cv::Mat& crop, flow::Engines& engines)
{
    vision::Photo photo;
    photo.pixels = crop;
    const auto begin = std::chrono::steady_clock::now();
    flow::examineSingleLine(photo, engines);
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin)
        .count();
}

double quantile(std::vector<double> values, double share)
{
    std::sort(values.begin(), values.end());
    return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

}  // namespace

int main(int argc, char** argv)
{
    const Settings settings = settingsFrom(argc, argv);
    cv::setNumThreads(1);
    flow::Engines engines = flow::makeEngines(WEFTMARK_SOURCE_DIR "/models/register");
    std::cout << "contrast  lines  median ms  90 of 100 ms  most ms\n";
    for (const double contrast : settings.contrasts) {
        std::vector<double> times;
        for (const DrawnMark& mark : otherMarks(contrast, settings.seed, settings.marks)) {
            const synthetic::DrawnPhoto drawn = synthetic::drawPhoto(mark.scene);
            for (const synthetic::LineTruth& line : drawn.stamps.front().lines) {
                if (std::abs(tiltOf(line)) > most_tilt_deg)
                    continue;
                const cv::Mat crop = cropOf(line, drawn.pixels);
                if (times.empty())
                    millisecondsOf(crop, engines);  // the network's first look allocates
                times.push_back(millisecondsOf(crop, engines));
            }
        }
        std::cout << std::fixed << std::setprecision(2) << std::setw(8) << contrast << std::setw(7)
                  << times.size() << std::setprecision(1) << std::setw(11) << quantile(times, 0.5)
                  << std::setw(14) << quantile(times, 0.9) << std::setw(9) << quantile(times, 1)
                  << '\n';
    }
    return 0;
}
