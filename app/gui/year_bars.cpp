#include "app/gui/year_bars.h"

#include <QPainter>
#include <algorithm>

#include "app/gui/cell_words.h"
#include "app/gui/look.h"

namespace gui {

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
    double taken = -1;  // where the last written year ends
    for (const auto& year : years_) {
        const double height = plot.height() * year.probability / std::max(highest, 1e-9);
        const QRectF bar(left(year.year) + 1, plot.bottom() - height, std::max(2.0, step - 2),
                         height);
        painter.fillRect(bar, colours.mark);
        const QString word = QString::number(year.year);
        const double wide = fontMetrics().horizontalAdvance(word);
        const double x = std::clamp(bar.center().x() - wide / 2, 0.0, width() - wide);
        if (x <= taken && year.probability < highest)
            continue;
        painter.setPen(colours.ink);
        if (x > taken)
            painter.drawText(QPointF(x, height + plot.bottom() - height + fontMetrics().ascent()),
                             word);
        taken = x + wide + 4;
        if (year.probability == highest)
            painter.drawText(QPointF(std::max(0.0, x), bar.top() - 2), shareWord(year.probability));
    }
    painter.setPen(colours.rule);
    painter.drawLine(plot.bottomLeft(), QPointF(left(last + 1), plot.bottom()));
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
    QRectF bar(from, rect().center().y() - 3, to - from, 6);
    painter.fillRect(bar, colours.rule);
    bar.setWidth(bar.width() * share_);
    painter.fillRect(bar, colours.mark);
}

}  // namespace gui
