// How many of the dates on photographs of packaging are read: the whole line, among at most 15
// lines of the photo. Plain Tesseract on the whole photo is run beside it.
//   real_dates [FOLDER] [--misses FOLDER] [--first N]
// FOLDER holds labels.tsv and the photos; ../shared/real_marks/dates by default.

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

#include <tesseract/baseapi.h>
#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>

#include "tests/bench/read_marks.h"
#include "vision/photo.h"
#include "vision/tesseract_reader.h"

namespace {

namespace fs = std::filesystem;

struct Label {
    fs::path file;
    std::string text;
    cv::Rect box;
};

std::vector<Label> readLabels(const fs::path& folder)
{
    std::ifstream in(folder / "labels.tsv");
    std::vector<Label> labels;
    std::string row;
    std::getline(in, row);
    while (std::getline(in, row)) {
        std::istringstream fields(row);
        Label label;
        std::string file;
        std::getline(fields, file, '\t');
        std::getline(fields, label.text, '\t');
        fields >> label.box.x >> label.box.y >> label.box.width >> label.box.height;
        label.file = folder / file;
        labels.push_back(label);
    }
    return labels;
}

class PlainTesseract {
public:
    PlainTesseract()
    {
        engine_.Init(nullptr, "eng", tesseract::OEM_LSTM_ONLY);
        engine_.SetVariable("debug_file", "/dev/null");
    }

    std::vector<std::string> lines(const cv::Mat& pixels)
    {
        cv::Mat grey;
        cv::cvtColor(pixels, grey, cv::COLOR_BGR2GRAY);
        engine_.SetPageSegMode(tesseract::PSM_AUTO);
        engine_.SetImage(grey.data, grey.cols, grey.rows, 1, static_cast<int>(grey.step));
        char* text = engine_.GetUTF8Text();
        std::istringstream in(text != nullptr ? text : "");
        delete[] text;
        std::vector<std::string> result;
        std::string row;
        while (std::getline(in, row))
            result.push_back(row);
        return result;
    }

private:
    tesseract::TessBaseAPI engine_;
};

// The photo with every line found drawn into it, and beside the label what was read.
void drawMiss(const fs::path& file, const vision::Photo& photo, const Label& label,
              const std::vector<bench::ReadLine>& lines)
{
    cv::Mat picture = photo.pixels.clone();
    cv::rectangle(picture, label.box, {0, 255, 255}, 1);
    for (const bench::ReadLine& line : lines) {
        for (std::size_t i = 0; i < 4; ++i)
            cv::line(picture, line.corners[i], line.corners[(i + 1) % 4],
                     i == 0 ? cv::Scalar(0, 0, 255) : cv::Scalar(255, 0, 255), 1, cv::LINE_AA);
        std::ostringstream note;
        note << line.text << ' ' << static_cast<int>(100 * line.certainty);
        cv::putText(picture, note.str(), line.corners[0], cv::FONT_HERSHEY_SIMPLEX, 0.45,
                    {255, 255, 0}, 1, cv::LINE_AA);
    }
    cv::imwrite(file.string(), picture);
}

double part(std::vector<double> values, double share)
{
    std::sort(values.begin(), values.end());
    return values.empty()
               ? 0
               : values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

}  // namespace

int main(int argc, char** argv)
{
    fs::path folder = "../shared/real_marks/dates", misses;
    std::size_t first = 100000;
    for (int i = 1; i < argc; ++i) {
        const std::string argument = argv[i];
        if (argument == "--misses" && i + 1 < argc)
            misses = argv[++i];
        else if (argument == "--first" && i + 1 < argc)
            first = std::stoul(argv[++i]);
        else
            folder = argument;
    }
    std::vector<Label> labels = readLabels(folder);
    labels.resize(std::min(labels.size(), first));
    if (labels.empty()) {
        std::cerr << "no labels in " << folder << '\n';
        return 3;
    }
    if (!misses.empty())
        fs::create_directories(misses);
    vision::TesseractReader reader;
    PlainTesseract plain;
    int hits = 0, plain_hits = 0, sure = 0, sure_right = 0;
    std::size_t most_lines = 0;
    std::vector<double> seconds, counts;
    for (const Label& label : labels) {
        const vision::Photo photo = vision::loadPhoto(label.file);
        const std::string wanted = bench::folded(label.text);
        const auto start = std::chrono::steady_clock::now();
        const std::vector<bench::ReadLine> lines = bench::readMarks(photo, reader);
        seconds.push_back(
            std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
        counts.push_back(static_cast<double>(lines.size()));
        most_lines = std::max(most_lines, lines.size());
        const bool hit = std::any_of(lines.begin(), lines.end(), [&](const auto& line) {
            if (bench::folded(line.text) == wanted && line.certainty >= 0.5)
                ++sure_right;
            return bench::folded(line.text) == wanted;
        });
        hits += hit ? 1 : 0;
        for (const bench::ReadLine& line : lines)
            sure += line.certainty >= 0.5 ? 1 : 0;
        for (const std::string& line : plain.lines(photo.pixels))
            if (bench::folded(line) == wanted) {
                ++plain_hits;
                break;
            }
        if (!hit && !misses.empty())
            drawMiss(misses / (label.file.stem().string() + ".jpg"), photo, label, lines);
    }
    const double n = static_cast<double>(labels.size());
    std::cout << "photos " << labels.size() << "\nWeftmark " << hits << " (" << 100 * hits / n
              << " %), of these with certainty 0.5 or more " << sure_right << "\nplain Tesseract "
              << plain_hits << " (" << 100 * plain_hits / n << " %)\nseconds a photo: median "
              << part(seconds, 0.5) << ", 90th percentile " << part(seconds, 0.9)
              << "\nlines a photo: median " << part(counts, 0.5) << ", most " << most_lines
              << "\nlines of certainty 0.5 or more: " << sure << '\n';
}
