#include "app/report/change_plot.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <stdexcept>

#include <QFont>
#include <QImage>
#include <QPainter>
#include <QPen>
#include <QString>
#include <QSvgGenerator>

namespace report {

namespace {

constexpr int width = 960, height = 520;
constexpr double left = 70, right = 930, top = 60, middle = 270, bottom = 300, base = 460;
const QColor ink(0x22, 0x2a, 0x33), with_colour(0x1f, 0x6f, 0x8b), without_colour(0xc9, 0x7b, 0x2d);
const QColor curve_fill(0x1f, 0x6f, 0x8b, 70), interval_fill(0xe8, 0xec, 0xee);

// Expected numbers of items by year.
struct Counts {
    std::vector<double> with, without;
    double most = 1;  // a whole number, the top of the scale
};

Counts countsOf(const ChangePlot& plot)
{
    const std::size_t years = plot.change.range.size();
    Counts counts{std::vector<double>(years, 0), std::vector<double>(years, 0), 1};
    for (const models::ChangeItem& item : plot.items)
        for (std::size_t y = 0; y < years; ++y)
            (item.has_detail ? counts.with : counts.without)[y] += item.years[y];
    for (std::size_t y = 0; y < years; ++y)
        counts.most = std::max(counts.most, std::ceil(counts.with[y] + counts.without[y]));
    return counts;
}

class PlotPainter {
public:
    PlotPainter(QPainter& painter, const ChangePlot& plot) : painter_(painter), plot_(plot) {}

    void paint();

private:
    double x(double year) const
    {
        const models::YearRange& range = plot_.change.range;
        return left + (right - left) * (year - range.first) / static_cast<double>(range.size());
    }
    void text(double at_x, double at_y, const std::string& words,
              Qt::Alignment align = Qt::AlignLeft);
    void paintInterval();
    void paintItems();
    void paintCurve();
    void paintYears();

    QPainter& painter_;
    const ChangePlot& plot_;
};

void PlotPainter::text(double at_x, double at_y, const std::string& words, Qt::Alignment align)
{
    painter_.setPen(ink);
    const double half = align == Qt::AlignHCenter ? 60 : 0;
    painter_.drawText(QRectF(at_x - half, at_y, half > 0 ? 2 * half : width - at_x - 10, 40),
                      static_cast<int>(align | Qt::AlignTop | Qt::TextWordWrap),
                      QString::fromStdString(words));
}

void PlotPainter::paintInterval()
{
    const models::ChangePosterior& pooled = plot_.change.pooled;
    if (pooled.can_say)
        painter_.fillRect(QRectF(QPointF(x(pooled.from), top), QPointF(x(pooled.to), base)),
                          interval_fill);
}

// With the detail filled, without it hatched: the two differ without colour, too.
void PlotPainter::paintItems()
{
    const Counts counts = countsOf(plot_);
    const double scale = (middle - top) / counts.most;
    for (std::size_t y = 0; y < counts.with.size(); ++y) {
        const double from = x(plot_.change.range.first + static_cast<double>(y)) + 1;
        const double wide = x(plot_.change.range.first + static_cast<double>(y) + 1) - 1 - from;
        const double with = counts.with[y] * scale, without = counts.without[y] * scale;
        painter_.setPen(QPen(ink, 0.6));
        painter_.setBrush(with_colour);
        if (with > 0.2)
            painter_.drawRect(QRectF(from, middle - with, wide, with));
        painter_.setBrush(QBrush(without_colour, Qt::BDiagPattern));
        if (without > 0.2)
            painter_.drawRect(QRectF(from, middle - with - without, wide, without));
    }
    painter_.setPen(QPen(ink, 1));
    painter_.drawLine(QPointF(left, middle), QPointF(right, middle));
    text(8, top, std::to_string(static_cast<int>(counts.most)));
    text(8, middle - 16, "items");
}

void PlotPainter::paintCurve()
{
    const std::vector<double>& time = plot_.change.pooled.time;
    const double most = *std::max_element(time.begin(), time.end());
    QPolygonF curve;
    curve << QPointF(left, base);
    for (std::size_t t = 0; t < time.size(); ++t) {
        const double from =
            plot_.change.range.first + static_cast<double>(t) / plot_.change.steps_a_year;
        const double high = base - (base - bottom - 20) * time[t] / most;
        curve << QPointF(x(from), high) << QPointF(x(from + 1.0 / plot_.change.steps_a_year), high);
    }
    curve << QPointF(right, base);
    painter_.setPen(QPen(with_colour, 1.2));
    painter_.setBrush(curve_fill);
    painter_.drawPolygon(curve);
    text(8, base - 16, "when");
}

void PlotPainter::paintYears()
{
    painter_.setPen(QPen(ink, 1));
    painter_.drawLine(QPointF(left, base), QPointF(right, base));
    for (int year = plot_.change.range.first; year <= plot_.change.range.last; ++year) {
        const bool is_tenth = year % 10 == 0;
        painter_.setPen(QPen(ink, is_tenth ? 1.2 : 0.5));
        painter_.drawLine(QPointF(x(year), base), QPointF(x(year), base + (is_tenth ? 8 : 4)));
        if (is_tenth)
            text(x(year), base + 10, std::to_string(year), Qt::AlignHCenter);
    }
}

void PlotPainter::paint()
{
    painter_.setRenderHint(QPainter::Antialiasing);
    QFont font(QStringLiteral("DejaVu Sans"));
    font.setPixelSize(16);
    painter_.setFont(font);
    text(left, 8, plot_.title);
    font.setPixelSize(13);
    painter_.setFont(font);
    text(left, 32, plot_.change.pooled.words);
    paintInterval();
    paintItems();
    paintCurve();
    paintYears();
    text(left, base + 34,
         "Filled: with the detail. Hatched: without it. Grey: the stated interval.");
}

[[noreturn]] void refuseFile(const std::filesystem::path& file)
{
    throw std::runtime_error(file.string() +
                             " cannot be written; name a file in a folder that can be");
}

void writeSvg(const ChangePlot& plot, const std::filesystem::path& file)
{
    QSvgGenerator generator;
    generator.setFileName(QString::fromStdString(file.string()));
    generator.setSize(QSize(width, height));
    generator.setViewBox(QRect(0, 0, width, height));
    generator.setTitle(QString::fromStdString(plot.title));
    QPainter painter;
    if (!painter.begin(&generator))
        refuseFile(file);
    PlotPainter(painter, plot).paint();
    if (!painter.end())
        refuseFile(file);
}

void writePng(const ChangePlot& plot, const std::filesystem::path& file)
{
    QImage image(width * 2, height * 2, QImage::Format_RGB32);
    image.setDevicePixelRatio(2);
    image.fill(Qt::white);
    QPainter painter(&image);
    PlotPainter(painter, plot).paint();
    painter.end();
    if (!image.save(QString::fromStdString(file.string()), "PNG"))
        refuseFile(file);
}

}  // namespace

void writeChangePlot(const ChangePlot& plot, const std::filesystem::path& file)
{
    const bool is_known = file.extension() == ".svg" || file.extension() == ".png";
    if (is_known && !std::ofstream(file))  // before Qt, which would complain in its own words
        refuseFile(file);
    if (file.extension() == ".svg")
        return writeSvg(plot, file);
    if (file.extension() == ".png")
        return writePng(plot, file);
    throw std::invalid_argument("a plot is written as .svg or .png, not as '" + file.string() +
                                "'");
}

}  // namespace report
