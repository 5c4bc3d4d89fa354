#include "app/gui/year_bars.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "app/gui/cell_words.h"
#include "app/gui/look.h"

namespace gui {

std::vector<YearLabel> yearLabels(int first, int last, int likeliest, double word_width,
                                  double room_width, const std::function<double(int)>& middle)
{
    constexpr double gap = 5;
    const auto labelOf = [&](int year) {
        const double left = middle(year) - word_width / 2;
        return YearLabel{year, std::clamp(left, 0.0, std::max(0.0, room_width - word_width)),
                         word_width};
    };
    std::vector<YearLabel> labels{labelOf(likeliest)};
    const double a_year = middle(first + 1) - middle(first);
    int every = 1;
    for (const int times : {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000}) {
        every = times;
        if (times * a_year >= word_width + gap)
            break;
    }
    const auto hasRoom = [&](const YearLabel& one) {
        return std::none_of(labels.begin(), labels.end(), [&](const YearLabel& other) {
            return std::abs(one.left - other.left) < word_width + gap;
        });
    };
    for (int year = (first + every - 1) / every * every; year <= last; year += every)
        if (hasRoom(labelOf(year)))
            labels.push_back(labelOf(year));
    return labels;
}

YearBars::YearBars(QWidget* parent) : QWidget(parent)
{
    setObjectName("yearBars");
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    showYears({});
}

void YearBars::showYears(const std::vector<models::YearShare>& years)
{
    years_ = years;
    std::sort(years_.begin(), years_.end(),
              [](const auto& a, const auto& b) { return a.year < b.year; });
    QStringList words;
    for (const models::YearShare& year : years_)
        words << tr("%1: %2").arg(year.year).arg(shareWord(year.probability));
    setAccessibleName(tr("Years"));
    setAccessibleDescription(words.isEmpty() ? tr("undated") : words.join(", "));
    setToolTip(accessibleDescription());
    update();
}

QSize YearBars::sizeHint() const
{
    return {160, fontMetrics().height() * 4};
}

void YearBars::paintEvent(QPaintEvent*)
{
    const Colours colours = coloursIn(palette());
    QPainter painter(this);
    if (years_.empty()) {
        painter.setPen(colours.quiet);
        painter.drawText(rect(), Qt::AlignCenter, tr("undated"));
        return;
    }
    const int first = years_.front().year, last = years_.back().year;
    const double count = last - first + 1;
    const double words = fontMetrics().height();
    const QRectF plot = QRectF(rect()).adjusted(2, words * 0.9, -2, -words);
    const double step = std::min(plot.width() / count, words * 3);
    double highest = 0;
    for (const auto& year : years_)
        highest = std::max(highest, year.probability);
    const auto left = [&](int year) { return plot.left() + (year - first) * step; };
    const auto likeliest = std::max_element(
        years_.begin(), years_.end(),
        [](const auto& a, const auto& b) { return a.probability < b.probability; });
    for (const auto& year : years_) {
        const double height = plot.height() * year.probability / std::max(highest, 1e-9);
        painter.fillRect(QRectF(left(year.year) + (step > 4 ? 1 : 0), plot.bottom() - height,
                                std::max(2.0, step - 2), height),
                         colours.mark);
    }
    const auto middle = [&](int year) { return left(year) + step / 2; };
    painter.setPen(colours.ink);
    for (const YearLabel& label :
         yearLabels(first, last, likeliest->year, fontMetrics().horizontalAdvance("0000"), width(),
                    middle)) {
        painter.drawText(QPointF(label.left, plot.bottom() + fontMetrics().ascent()),
                         QString::number(label.year));
        if (label.year == likeliest->year)
            painter.drawText(QPointF(label.left, plot.top() - 2), shareWord(highest));
    }
    painter.setPen(colours.rule);
    painter.drawLine(plot.bottomLeft(), QPointF(left(last + 1), plot.bottom()));
}

void paintShare(QPainter& painter, const QRectF& room, double share, const QColor& empty,
                const QColor& full)
{
    painter.fillRect(QRectF(room.left(), room.bottom() - 1, room.width(), 1), empty);
    painter.fillRect(QRectF(room.left(), room.top(), room.width() * share, room.height()), full);
}

ShareBar::ShareBar(const QString& name, QWidget* parent) : QWidget(parent), name_(name)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(name);
    showShare(-1);
}

void ShareBar::showShare(double share)
{
    share_ = share;
    setAccessibleDescription(share < 0 ? tr("not weighed yet") : shareWord(share));
    update();
}

QSize ShareBar::sizeHint() const
{
    return {200, fontMetrics().height() + 8};
}

void ShareBar::paintEvent(QPaintEvent*)
{
    const Colours colours = coloursIn(palette());
    QPainter painter(this);
    painter.fillRect(rect(), colours.ground);
    painter.setPen(colours.ink);
    const QRectF words = QRectF(rect()).adjusted(6, 0, -6, 0);
    painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter, name_);
    painter.drawText(words, Qt::AlignRight | Qt::AlignVCenter,
                     share_ < 0 ? QString("\u2013") : shareWord(share_));
    const QFontMetrics metrics = fontMetrics();
    const double from = words.left() + metrics.horizontalAdvance(name_) + 14;
    const double to = words.right() - metrics.horizontalAdvance(tr("more than 99 %")) - 14;
    if (to - from < 24 || share_ < 0)
        return;
    paintShare(painter, QRectF(from, rect().center().y() - 3, to - from, 6), share_, colours.rule,
               colours.mark);
}

}  // namespace gui
