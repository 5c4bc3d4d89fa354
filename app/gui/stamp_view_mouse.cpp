// What is under the mouse, and the magnifier, which follows it.
#include <QMouseEvent>
#include <algorithm>

#include "app/gui/magnifier.h"
#include "app/gui/stamp_view.h"

namespace gui {

namespace {

// What the magnifier is laid over: all that is in the window.
QWidget* allInWindow(QWidget* widget)
{
    while (widget->parentWidget() && !widget->parentWidget()->isWindow())
        widget = widget->parentWidget();
    return widget;
}

}  // namespace

void StampView::clickSheet(const QPointF& position)
{
    setFocus(Qt::MouseFocusReason);
    for (std::size_t i = 0; i < layout_.bands.size(); ++i) {
        const LineBand& band = layout_.bands[i];
        if (!band.picture.contains(position))
            continue;
        // Of lines side by side the first that reaches so far.
        const bool shared =
            i + 1 < layout_.bands.size() && layout_.bands[i + 1].picture == band.picture;
        if (shared && !band.cells.empty() && position.x() >= band.cells.back().right())
            continue;
        std::size_t cell = band.cells.size();
        for (std::size_t k = band.cells.size(); k-- > 0;)
            if (position.x() < band.cells[k].right())
                cell = k;
        return Q_EMIT placed({i, cell});
    }
}

void StampView::setMagnifier(bool on)
{
    magnifier_on_ = on;
    sheet_->update();
    showMagnifier();
}

void StampView::followMouse(QEvent* event)
{
    if (event->type() == QEvent::Leave)
        mouse_at_.reset();
    else
        mouse_at_ = static_cast<QMouseEvent*>(event)->position();
    if (magnifier_on_)
        showMagnifier();
}

// In the picture as much as a letter takes around the point; in the cells the letter of the one
// that is there.
QRectF StampView::letterUnder(const QPointF& on_sheet) const
{
    for (std::size_t i = 0; i < layout_.bands.size(); ++i) {
        const LineBand& band = layout_.bands[i];
        for (std::size_t cell = 0; cell < band.cells.size(); ++cell)
            if (band.cells[cell].contains(on_sheet))
                return letterAt({i, cell});
        if (!band.picture.contains(on_sheet))
            continue;
        const double height = std::max(lines_[i].box_px.height, band.source.height() * 0.3);
        const QPointF point(
            (on_sheet.x() - layout_.left) / layout_.scale,
            band.source.top() + (on_sheet.y() - band.picture.top()) / layout_.scale);
        QRectF part(0, 0, height * 0.6, height);
        part.moveCenter(point);
        return part;
    }
    return {};
}

// In the lower half of the view, on the side away from what it shows, so that neither hides the
// other; in a low view it reaches over what is below.
void StampView::showMagnifier()
{
    const QRectF under_mouse = mouse_at_ ? letterUnder(*mouse_at_) : QRectF();
    const QRectF part = under_mouse.isEmpty() ? letterAt(place_) : under_mouse;
    if (!magnifier_on_ || part.isEmpty() || pixels_.empty()) {
        if (magnifier_)
            magnifier_->hide();
        return;
    }
    QWidget* all = allInWindow(this);
    if (!magnifier_)
        magnifier_ = new Magnifier(all);
    constexpr int least_height = 280;
    const QRect view(viewport()->mapTo(all, QPoint()), viewport()->size());
    const double middle_x = layout_.left + part.center().x() * layout_.scale + sheet_->x();
    QRect room(view.left(), view.top() + view.height() * 45 / 100, view.width() / 2,
               std::max(view.height() * 55 / 100, least_height));
    if (middle_x < view.width() / 2.0)
        room.moveLeft(view.center().x());
    if (room.bottom() > all->height())
        room.moveBottom(all->height());
    magnifier_->showPart(pixels_, part, under_mouse.isEmpty(), room);
}

}  // namespace gui
