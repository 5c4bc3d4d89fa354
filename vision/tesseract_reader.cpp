#include "vision/tesseract_reader.h"

#include <algorithm>
#include <vector>

#include "vision/line_certainty.h"
#include "vision/line_crop.h"
#include "vision/tesseract_engine.h"
#include "vision/text_rows.h"

namespace vision {

namespace {

constexpr double letter_px = 34;  // height Tesseract's network reads best, margins apart
constexpr double rim = 0.35;      // of the letter height

}  // namespace

struct TesseractReader::Engines {
    TesseractEngine first;
};

TesseractReader::TesseractReader() : engines_(std::make_unique<Engines>())
{
}

TesseractReader::~TesseractReader() = default;

std::string TesseractReader::name() const
{
    return "tesseract";
}

std::string TesseractReader::version() const
{
    return TesseractEngine::version();
}

models::Reading TesseractReader::read(const EnhancedStamp& stamp)
{
    std::vector<cv::Rect2d> rows = stamp.rectified.lines;
    if (rows.empty())
        rows = findTextRows(stamp.layer("flat"));
    models::Reading reading;
    reading.reader = version();
    reading.basis = models::Basis::Photo;
    reading.layer = "flat";
    for (const cv::Rect2d& row : rows) {
        const cv::Mat& layer = stamp.layer("flat");
        const InkEvidence ink = measureInk(layer, row);
        if (!inkStands(ink))
            continue;
        const LineCrop crop = cropLine(layer, row, letter_px, rim);
        reading.lines.push_back(lineFrom(engines_->first.recognise(crop), row, ink, name()));
    }
    return reading;
}

models::Reading TesseractReader::readLine(const EnhancedStamp& stamp)
{
    EnhancedStamp single = stamp;
    if (single.rectified.lines.empty()) {
        const cv::Mat& flat = stamp.layer("flat");
        std::vector<cv::Rect2d> rows = findTextRows(flat);
        if (rows.empty())
            rows.emplace_back(0, 0.15 * flat.rows, flat.cols, 0.7 * flat.rows);
        const auto tallest =
            std::max_element(rows.begin(), rows.end(),
                             [](const auto& a, const auto& b) { return a.area() < b.area(); });
        single.rectified.lines = {*tallest};
    }
    return read(single);
}

}  // namespace vision
