#include "vision/tesseract_reader.h"

#include <algorithm>
#include <vector>

#include "vision/tesseract_lines.h"
#include "vision/text_rows.h"

namespace vision {

namespace {

constexpr const char* layer_read = "flat";

// The row that holds the writing of a picture known to be one line.
LineRow onlyRow(const cv::Mat& layer)
{
    const std::vector<LineRow> rows = findTextRows(layer);
    if (rows.empty())
        return {{0, 0.15 * layer.rows, static_cast<double>(layer.cols), 0.7 * layer.rows}};
    return *std::max_element(rows.begin(), rows.end(), [](const LineRow& a, const LineRow& b) {
        return a.box.area() < b.box.area();
    });
}

}  // namespace

struct TesseractReader::Engines {
    TesseractLines lines;
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

models::Reading TesseractReader::readRows(const cv::Mat& layer, const std::vector<LineRow>& rows)
{
    models::Reading reading;
    reading.reader = version();
    reading.basis = models::Basis::Photo;
    reading.layer = layer_read;
    for (const LineReadings& line : engines_->lines.read(layer, rows))
        reading.lines.push_back(lineFrom(line, name()));
    return reading;
}

models::Reading TesseractReader::read(const EnhancedStamp& stamp)
{
    const cv::Mat& layer = stamp.layer(layer_read);
    const std::vector<LineRow> rows = rowsOf(stamp.rectified);
    return readRows(layer, rows.empty() ? findTextRows(layer) : rows);
}

models::Reading TesseractReader::readLine(const EnhancedStamp& stamp)
{
    const cv::Mat& layer = stamp.layer(layer_read);
    const std::vector<LineRow> rows = rowsOf(stamp.rectified);
    return readRows(layer, {rows.empty() ? onlyRow(layer) : rows.front()});
}

}  // namespace vision
