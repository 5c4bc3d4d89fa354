// Nearer and farther, tones, the magnifier, pulling the sheet.
#include <QMouseEvent>
#include <QPainter>
#include <QScrollBar>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "app/gui/magnifier.h"
#include "app/gui/stamp_view.h"

namespace gui {

namespace {

constexpr double most_times = 8;

}  // namespace

// On the sheet: the middle of the letter in hand, of its cell where it has no place, or of the
// view.
QPointF StampView::pointInHand() const
{
    const QPointF middle = QPointF(viewport()->rect().center()) - sheet_->pos();
    if (place_.line >= layout_.bands.size())
        return middle;
    const LineBand& band = layout_.bands[place_.line];
    if (band.cells.empty())
        return {middle.x(), band.strip.center().y()};
    const QRectF& cell = band.cells[std::min(place_.cell, band.cells.size() - 1)];
    return {cell.center().x(), band.picture.center().y()};
}

void StampView::zoom(double factor, std::optional<QPointF> about)
{
    const double before = zoom_;
    zoom_ = std::clamp(zoom_ * factor, 1.0, most_times);
    if (zoom_ == before || pixels_.empty())
        return;
    const QPointF held = about.value_or(pointInHand());  // on the sheet
    const QPointF in_view = held + sheet_->pos();
    const double source_x = (held.x() - layout_.left) / layout_.scale;
    const double share_y = held.y() / std::max(1, sheet_->height());
    layOut();
    const QPointF now(layout_.left + source_x * layout_.scale, share_y * sheet_->height());
    horizontalScrollBar()->setValue(static_cast<int>(std::lround(now.x() - in_view.x())));
    verticalScrollBar()->setValue(static_cast<int>(std::lround(now.y() - in_view.y())));
}

void StampView::setTones(const Tones& tones)
{
    if (tones == tones_)
        return;
    tones_ = tones;
    scaled_ = {};
    scalePicture();
    sheet_->update();
}

void StampView::dragSheet(QMouseEvent* event)
{
    const QPoint at = event->globalPosition().toPoint();
    if (event->type() == QEvent::MouseButtonRelease) {
        dragged_from_.reset();
    } else if (event->type() == QEvent::MouseButtonPress) {
        if (event->button() == Qt::MiddleButton)
            dragged_from_ = at;
        else
            clickSheet(event->position());
    } else if (dragged_from_) {
        const QPoint by = at - *dragged_from_;
        horizontalScrollBar()->setValue(horizontalScrollBar()->value() - by.x());
        verticalScrollBar()->setValue(verticalScrollBar()->value() - by.y());
        dragged_from_ = at;
    }
}

void StampView::wheelEvent(QWheelEvent* event)
{
    if (!event->modifiers().testFlag(Qt::ControlModifier))
        return QScrollArea::wheelEvent(event);
    zoom(std::pow(1.2, event->angleDelta().y() / 120.0), event->position() - sheet_->pos());
    event->accept();
}

}  // namespace gui
