// How many lines of drawn stamps are found and read exactly, by wear and by angle.
//   drawn_stamps [--count N] [--seed S] [--bare N] [--save FOLDER]
// N stamped photos a wear (40), and N bare ones (20). --save writes the photos with what was read
// drawn into them, beside the clean ones with labels.tsv.

#include <algorithm>
#include <array>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <map>
#include <optional>
#include <string>

#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>

#include "tests/bench/drawn_set.h"
#include "tests/bench/read_marks.h"
#include "vision/tesseract_reader.h"

namespace {

namespace fs = std::filesystem;

struct Tally {
    int lines = 0, found = 0, exact = 0, stamps = 0, whole = 0, sure = 0, sure_wrong = 0;
    double seconds = 0;
};

struct Settings {
    int count = 40, bare = 20;
    std::uint32_t seed = 1;
    fs::path save;
};

double overlap(const vision::Quad& a, const vision::Quad& b)
{
    const std::vector<cv::Point2f> p(a.begin(), a.end()), q(b.begin(), b.end());
    std::vector<cv::Point2f> common;
    const double area = cv::intersectConvexConvex(p, q, common);
    return area / std::max(1.0, cv::contourArea(p) + cv::contourArea(q) - area);
}

void addPhoto(Tally& tally, const synthetic::StampTruth& truth,
              const std::vector<bench::ReadLine>& lines)
{
    bool whole = true;
    for (const synthetic::LineTruth& line : truth.lines) {
        ++tally.lines;
        tally.found += std::any_of(lines.begin(), lines.end(), [&](const auto& read) {
            return overlap(read.corners, line.corners) > 0.5;
        });
        const bool exact = std::any_of(lines.begin(), lines.end(), [&](const auto& read) {
            return bench::folded(read.text) == bench::folded(line.text);
        });
        tally.exact += exact ? 1 : 0;
        whole = whole && exact;
    }
    ++tally.stamps;
    tally.whole += whole ? 1 : 0;
    for (const bench::ReadLine& read : lines) {
        if (read.certainty < 0.5)
            continue;
        ++tally.sure;
        const bool right = std::any_of(
            truth.lines.begin(), truth.lines.end(),
            [&](const auto& line) { return bench::folded(read.text) == bench::folded(line.text); });
        tally.sure_wrong += right ? 0 : 1;
    }
}

void print(const std::string& name, const Tally& t)
{
    if (t.lines == 0)
        return;
    std::cout << name << ": lines " << t.lines << ", found " << 100 * t.found / t.lines
              << " %, exact " << 100 * t.exact / t.lines << " %, stamps whole "
              << 100 * t.whole / t.stamps << " %, lines of certainty 0.5 or more " << t.sure
              << ", of these wrong " << t.sure_wrong << ", seconds a photo " << t.seconds / t.stamps
              << '\n';
}

void save(const fs::path& folder, const std::string& name, const synthetic::DrawnPhoto& drawn,
          const std::vector<bench::ReadLine>& lines)
{
    fs::create_directories(folder / "read");
    cv::imwrite((folder / (name + ".png")).string(), drawn.pixels);
    std::ofstream labels(folder / "labels.tsv", std::ios::app);
    labels << name << ".png";
    for (const synthetic::StampTruth& stamp : drawn.stamps) {
        labels << '\t' << stamp.up_deg << "\t0\t0";
        for (const synthetic::LineTruth& line : stamp.lines) {
            labels << '\t' << line.text << '\t';
            for (const cv::Point2f& corner : line.corners)
                labels << corner.x << ',' << corner.y << ';';
        }
    }
    labels << '\n';
    cv::Mat picture = drawn.pixels.clone();
    for (const bench::ReadLine& line : lines) {
        for (std::size_t i = 0; i < 4; ++i)
            cv::line(picture, line.corners[i], line.corners[(i + 1) % 4],
                     i == 0 ? cv::Scalar(0, 0, 255) : cv::Scalar(255, 0, 255), 1, cv::LINE_AA);
        cv::putText(picture, line.text + ' ' + std::to_string(std::lround(100 * line.certainty)),
                    line.corners[0], cv::FONT_HERSHEY_SIMPLEX, 0.7, {255, 255, 0}, 1, cv::LINE_AA);
    }
    cv::imwrite((folder / "read" / (name + ".jpg")).string(), picture);
}

Settings settingsFrom(int argc, char** argv)
{
    Settings settings;
    for (int i = 1; i + 1 < argc; i += 2) {
        const std::string name = argv[i];
        if (name == "--count")
            settings.count = std::stoi(argv[i + 1]);
        else if (name == "--seed")
            settings.seed = static_cast<std::uint32_t>(std::stoul(argv[i + 1]));
        else if (name == "--bare")
            settings.bare = std::stoi(argv[i + 1]);
        else if (name == "--save")
            settings.save = argv[i + 1];
    }
    return settings;
}

}  // namespace

int main(int argc, char** argv)
{
    const Settings settings = settingsFrom(argc, argv);
    vision::TesseractReader reader;
    std::array<Tally, 6> by_angle;  // steps of 60 degrees, the first around upright
    for (const bench::Wear wear : {bench::Wear::Easy, bench::Wear::Medium, bench::Wear::Hard}) {
        Tally tally;
        for (int i = 0; i < settings.count; ++i) {
            const auto seed = settings.seed * 1000 + static_cast<std::uint32_t>(i);
            const synthetic::DrawnPhoto drawn =
                synthetic::drawPhoto(bench::stampedScene(seed, wear));
            vision::Photo photo;
            photo.pixels = drawn.pixels;
            const auto start = std::chrono::steady_clock::now();
            const auto lines = bench::readMarks(photo, reader);
            const double seconds =
                std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
            const synthetic::StampTruth& truth = drawn.stamps.front();
            Tally& angle = by_angle[static_cast<std::size_t>((truth.up_deg + 30) / 60) % 6];
            for (Tally* t : {&tally, &angle}) {
                addPhoto(*t, truth, lines);
                t->seconds += seconds;
            }
            if (!settings.save.empty())
                save(settings.save, bench::nameOf(wear) + std::to_string(seed), drawn, lines);
        }
        print(bench::nameOf(wear), tally);
    }
    for (std::size_t i = 0; i < by_angle.size(); ++i)
        print("up within 30 degrees of " + std::to_string(60 * i), by_angle[i]);
    int bare_lines = 0, bare_sure = 0;
    for (int i = 0; i < settings.bare; ++i) {
        const auto seed = settings.seed * 1000 + 500 + static_cast<std::uint32_t>(i);
        const synthetic::DrawnPhoto drawn = synthetic::drawPhoto(bench::bareScene(seed));
        vision::Photo photo;
        photo.pixels = drawn.pixels;
        const auto lines = bench::readMarks(photo, reader);
        for (const bench::ReadLine& line : lines) {
            ++bare_lines;
            bare_sure += line.certainty >= 0.5 ? 1 : 0;
        }
        if (!settings.save.empty())
            save(settings.save, "bare" + std::to_string(seed), drawn, lines);
    }
    std::cout << "bare photos " << settings.bare << ", lines " << bare_lines
              << ", of certainty 0.5 or more " << bare_sure << '\n';
}
