#include "vision/line_reader.h"

#include <algorithm>

#include <opencv2/imgproc.hpp>

#include "vision/line_crop.h"
#include "vision/network_cells.h"
#include "vision/text_rows.h"

namespace vision {

namespace {

constexpr const char* layer_read = "grey";
constexpr const char* writing_name = "writing_model.txt";
// Capitals to five eighths of the crop, as most were in training.
constexpr LineRendering rendering{.letter_px = 30, .rim = 0.3, .smoothing = 0};

LineRow wholeRow(const cv::Mat& layer)
{
    const double rim = rendering.rim / (1 + 2 * rendering.rim) * layer.rows;
    return {{rim, rim, std::max(1.0, layer.cols - 2 * rim), std::max(1.0, layer.rows - 2 * rim)}};
}

LineCrop networkCrop(const cv::Mat& layer, const LineRow& row)
{
    LineCrop crop = cropLine(layer, row, rendering);
    if (crop.grey.rows != LineNetwork::height_px)  // a very long line was made smaller
        cv::resize(crop.grey, crop.grey, {crop.grey.cols, LineNetwork::height_px}, 0, 0,
                   cv::INTER_CUBIC);
    return crop;
}

}  // namespace

LineReader::LineReader(const std::filesystem::path& weights_folder, DecodeOptions options)
    : network_(weights_folder),
      writing_(WritingModel::load(weights_folder / writing_name)),
      options_(options)
{
}

std::string LineReader::version() const
{
    return "line-reader " + network_.sha256().substr(0, 8);
}

LineReader::SeenRow LineReader::look(const EnhancedStamp& stamp, const LineRow& row)
{
    SeenRow seen{networkCrop(stamp.layer(layer_read), row), {}, {}};
    seen.log_shares = network_.logShares(seen.crop.grey);
    seen.decoded = decodeLine(seen.log_shares, classes(), &writing_, options_);
    return seen;
}

models::Reading LineReader::readRows(const EnhancedStamp& stamp, const std::vector<LineRow>& rows)
{
    models::Reading reading;
    reading.reader = version();
    reading.basis = models::Basis::Photo;
    reading.layer = layer_read;
    reading.weights_sha256 = network_.sha256();
    for (const LineRow& row : rows) {
        const SeenRow seen = look(stamp, row);
        models::Line line = lineFrom(seen.decoded, classes(), seen.crop, row.box, name());
        if (!line.cells.empty())
            reading.lines.push_back(std::move(line));
    }
    return reading;
}

models::Reading LineReader::read(const EnhancedStamp& stamp)
{
    const std::vector<LineRow> rows = rowsOf(stamp.rectified);
    return readRows(stamp, rows.empty() ? findTextRows(stamp.layer("flat")) : rows);
}

models::Reading LineReader::readLine(const EnhancedStamp& stamp)
{
    const std::vector<LineRow> rows = rowsOf(stamp.rectified);
    return readRows(stamp, {rows.empty() ? wholeRow(stamp.layer(layer_read)) : rows.front()});
}

}  // namespace vision
