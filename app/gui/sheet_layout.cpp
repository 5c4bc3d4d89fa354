#include "app/gui/sheet_layout.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace gui {

namespace {

struct Span {
    double left = 0, right = 0;
};

// Where each cell would like to be; cells without a place share the gap around them.
std::vector<Span> wishes(const models::Line& line, double scale, double offset, double usual)
{
    const std::vector<CellExtent> extents = cellExtents(line);
    std::vector<Span> spans(extents.size());
    double edge = offset + line.box_px.x * scale;
    for (std::size_t i = 0; i < extents.size();) {
        if (extents[i].isKnown()) {
            spans[i] = {offset + extents[i].left * scale, offset + extents[i].right * scale};
            edge = spans[i].right;
            ++i;
            continue;
        }
        std::size_t next = i;
        while (next < extents.size() && !extents[next].isKnown())
            ++next;
        const double count = static_cast<double>(next - i);
        double each = usual;
        if (next < extents.size())
            each = std::clamp((offset + extents[next].left * scale - edge) / count, 0.0, usual);
        for (; i < next; ++i, edge += each)
            spans[i] = {edge, edge + each};
    }
    return spans;
}

// The least shifting that gives every cell its width and none its neighbour's place.
void part(std::vector<Span>& spans, double least, double right_limit)
{
    double edge = 0;
    for (Span& span : spans) {
        const double middle = (span.left + span.right) / 2;
        const double width = std::max(span.right - span.left, least);
        span.left = std::max(middle - width / 2, edge);
        span.right = std::max(span.left + least, middle + width / 2);
        edge = span.left + least;
    }
    for (std::size_t i = 0; i + 1 < spans.size(); ++i)
        spans[i].right = std::min(spans[i].right, spans[i + 1].left);
    double limit = std::max(right_limit, least * static_cast<double>(spans.size()));
    for (auto span = spans.rbegin(); span != spans.rend() && span->right > limit; ++span) {
        span->right = limit;
        span->left = std::min(span->left, limit - least);
        limit = span->left;
    }
}

std::vector<QRectF> cellRects(const models::Line& line, const SheetLayout& sheet,
                              const SheetRoom& room, const QRectF& strip)
{
    const double count = static_cast<double>(std::max<std::size_t>(line.cells.size(), 1));
    const double least = std::min(room.least_cell, (sheet.width - room.margin) / count);
    auto spans = wishes(line, sheet.scale, sheet.left, room.least_cell * 1.6);
    part(spans, least, sheet.width - room.margin);
    std::vector<QRectF> rects;
    for (const Span& span : spans)
        rects.emplace_back(span.left, strip.top(), span.right - span.left, strip.height());
    return rects;
}

double scaleOf(const QSizeF& rectified, std::size_t lines, const SheetRoom& room)
{
    const double full = (room.width - 2 * room.margin) / rectified.width();
    const double strips = room.strip_height * static_cast<double>(std::max<std::size_t>(lines, 1));
    const double fitting = (room.height - strips) / rectified.height();
    return std::min(full, std::max(fitting, 0.6 * full));
}

bool standBeside(const models::Box& a, const models::Box& b)
{
    if (a.height <= 0 || b.height <= 0)
        return false;
    const double shared = std::min(a.y + a.height, b.y + b.height) - std::max(a.y, b.y);
    const bool apart = a.x + a.width <= b.x + b.width / 2 || b.x + b.width <= a.x + a.width / 2;
    return apart && shared > 0.5 * std::min(a.height, b.height);
}

// The lines from `first` on that stand side by side, as one box; how many they are.
std::pair<models::Box, std::size_t> rowFrom(const std::vector<models::Line>& lines,
                                            std::size_t first)
{
    models::Box box = lines[first].box_px;
    std::size_t count = 1;
    while (first + count < lines.size() &&
           standBeside(lines[first + count - 1].box_px, lines[first + count].box_px)) {
        const models::Box& next = lines[first + count].box_px;
        const double bottom = std::max(box.y + box.height, next.y + next.height);
        box.y = std::min(box.y, next.y);
        box.height = bottom - box.y;
        ++count;
    }
    return {box, count};
}

// Where the picture is cut below a row: between it and the next one.
double cutBelow(const models::Box& row, const std::vector<models::Line>& lines, std::size_t next)
{
    const double bottom = row.y + row.height;
    if (next >= lines.size() || lines[next].box_px.height <= 0)
        return bottom + row.height * 0.12;
    return (bottom + std::max(rowFrom(lines, next).first.y, row.y)) / 2;
}

void moveDown(SheetLayout& sheet, double by)
{
    sheet.top = by;
    sheet.tail_picture.translate(0, by);
    for (LineBand& band : sheet.bands) {
        band.picture.translate(0, by);
        band.strip.translate(0, by);
        for (QRectF& cell : band.cells)
            cell.translate(0, by);
    }
}

// Without a picture the strips stand one below the other, a strip's height left for words above.
SheetLayout layOutStripsAlone(const std::vector<models::Line>& lines, const SheetRoom& room)
{
    SheetLayout sheet;
    sheet.width = room.width;
    sheet.left = room.margin;
    sheet.height = lines.empty() ? 0 : room.strip_height;
    for (models::Line line : lines) {
        line.box_px = {};
        for (models::Cell& cell : line.cells)
            cell.left_px = cell.right_px = 0;  // of a picture that is not there
        LineBand band;
        band.strip = QRectF(0, sheet.height, sheet.width, room.strip_height);
        band.cells = cellRects(line, sheet, room, band.strip);
        band.picture = QRectF(sheet.left, sheet.height, 0, 0);
        sheet.height += room.strip_height;
        sheet.bands.push_back(std::move(band));
    }
    return sheet;
}

}  // namespace

std::vector<CellExtent> cellExtents(const models::Line& line)
{
    std::vector<CellExtent> extents;
    for (const models::Cell& cell : line.cells)
        extents.push_back({cell.left_px, cell.right_px});
    std::optional<double> next_left;
    for (auto extent = extents.rbegin(); extent != extents.rend(); ++extent) {
        if (!extent->isKnown())
            continue;
        if (next_left && *next_left > extent->left)
            extent->right = std::min(extent->right, *next_left);
        next_left = extent->left;
    }
    return extents;
}

SheetLayout layOutSheet(const QSizeF& rectified, const std::vector<models::Line>& lines,
                        const SheetRoom& room)
{
    SheetLayout sheet;
    if (room.width <= 2 * room.margin)
        return sheet;
    if (rectified.isEmpty())
        return layOutStripsAlone(lines, room);
    sheet.scale = scaleOf(rectified, lines.size(), room) * std::max(1.0, room.zoom);
    sheet.width = std::max(room.width, rectified.width() * sheet.scale + 2 * room.margin);
    sheet.left = (sheet.width - rectified.width() * sheet.scale) / 2;
    double source_top = 0, y = 0;
    const auto slice = [&](double source_bottom, QRectF& source, QRectF& picture) {
        source = QRectF(0, source_top, rectified.width(), source_bottom - source_top);
        picture =
            QRectF(sheet.left, y, rectified.width() * sheet.scale, source.height() * sheet.scale);
        source_top = source_bottom;
        y += picture.height();
    };
    for (std::size_t first = 0; first < lines.size();) {
        const auto [row, count] = rowFrom(lines, first);
        LineBand band;
        const double cut = row.height > 0 ? cutBelow(row, lines, first + count) : source_top;
        slice(std::clamp(cut, source_top, rectified.height()), band.source, band.picture);
        for (const std::size_t end = first + count; first < end; ++first) {
            band.strip = QRectF(0, y, sheet.width, room.strip_height);
            y += room.strip_height;
            band.cells = cellRects(lines[first], sheet, room, band.strip);
            sheet.bands.push_back(band);
        }
    }
    slice(rectified.height(), sheet.tail_source, sheet.tail_picture);
    sheet.height = y;
    moveDown(sheet, std::max(0.0, (room.height - y) * 0.3));
    return sheet;
}

}  // namespace gui
