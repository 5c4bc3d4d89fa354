#include "vision/line_reader.h"

#include <algorithm>
#include <utility>

#include "vision/network_cells.h"
#include "vision/network_crop.h"
#include "vision/text_rows.h"

namespace vision {

namespace {

constexpr const char* layer_read = "grey";
constexpr const char* writing_name = "writing_model.txt";

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

LineReader::SeenRow LineReader::look(const EnhancedStamp& stamp, const LineRow& row,
                                     bool ends_known)
{
    SeenRow seen{networkCrop(stamp.layer(layer_read), row), {}, {}};
    seen.log_shares = network_.logShares(seen.crop.grey);
    seen.decoded = decodeLine(seen.log_shares, classes(), &writing_, options_);
    seen.decoded = withWideSpaces(std::move(seen.decoded), classes());
    if (ends_known)
        seen.decoded = withinRow(std::move(seen.decoded), seen.crop);
    return seen;
}

models::Reading LineReader::readRows(const EnhancedStamp& stamp, const std::vector<LineRow>& rows,
                                     bool ends_known)
{
    models::Reading reading;
    reading.reader = version();
    reading.basis = models::Basis::Photo;
    reading.layer = layer_read;
    reading.weights_sha256 = network_.sha256();
    for (const LineRow& row : rows) {
        const SeenRow seen = look(stamp, row, ends_known);
        models::Line line = lineFrom(seen.decoded, classes(), seen.crop, row.box, name());
        if (!line.cells.empty())
            reading.lines.push_back(std::move(line));
    }
    return reading;
}

models::Reading LineReader::read(const EnhancedStamp& stamp)
{
    const std::vector<LineRow> rows = rowsOf(stamp.rectified);
    return readRows(stamp, rows.empty() ? findTextRows(stamp.layer("flat")) : rows, true);
}

models::Reading LineReader::readLine(const EnhancedStamp& stamp)
{
    const std::vector<LineRow> rows = rowsOf(stamp.rectified);
    if (rows.empty())
        return readRows(stamp, {rowOfWhole(stamp.layer(layer_read))}, false);
    return readRows(stamp, {rows.front()}, true);
}

}  // namespace vision
