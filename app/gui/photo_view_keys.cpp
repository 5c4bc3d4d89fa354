// The photo drawer by keyboard.
#include <QKeyEvent>

#include "app/gui/photo_view.h"

namespace gui {

void PhotoView::pickHandle(int handle)
{
    if (handle != handle_)
        ++gesture_;
    handle_ = handle;
    tellAccessible();
    update();
}

void PhotoView::shift(QPointF by, int gesture)
{
    if (current_ < 0)
        return;
    const auto moved = movedHandle(outlines_[static_cast<std::size_t>(current_)], handle_, by,
                                   {pixels_.cols, pixels_.rows});
    if (moved)
        Q_EMIT outlineMoved(current_, *moved, gesture);
    else
        Q_EMIT couldNot(tr("The outline would fold over; move another corner first."));
}

void PhotoView::turn(double degrees, int gesture)
{
    if (current_ < 0)
        return;
    const auto turned = turnedOutline(outlines_[static_cast<std::size_t>(current_)], degrees,
                                      {pixels_.cols, pixels_.rows});
    if (turned)
        Q_EMIT outlineMoved(current_, *turned, gesture);
    else
        Q_EMIT couldNot(tr("Turned further, the outline would leave the photo; make it smaller."));
}

void PhotoView::addOutline()
{
    if (pixels_.empty())
        Q_EMIT couldNot(tr("There is no photo here in which a stamp could be outlined."));
    else
        Q_EMIT outlineAdded(newOutline(centre_, {pixels_.cols, pixels_.rows}));
}

bool PhotoView::moveByKey(const QKeyEvent& event)
{
    const double step = event.modifiers().testFlag(Qt::ShiftModifier) ? 10 : 1;
    switch (event.key()) {
        case Qt::Key_Left:
            shift({-step, 0}, gesture_);
            return true;
        case Qt::Key_Right:
            shift({step, 0}, gesture_);
            return true;
        case Qt::Key_Up:
            shift({0, -step}, gesture_);
            return true;
        case Qt::Key_Down:
            shift({0, step}, gesture_);
            return true;
        default:
            return false;
    }
}

void PhotoView::keyPressEvent(QKeyEvent* event)
{
    const bool command = event->modifiers() & (Qt::ControlModifier | Qt::AltModifier);
    if (command || (current_ >= 0 && moveByKey(*event))) {
        event->setAccepted(!command);
        return;
    }
    const int count = static_cast<int>(outlines_.size());
    constexpr int handles = whole_outline + 1;
    switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            return pickHandle((handle_ + 1) % handles);
        case Qt::Key_Backspace:
            return pickHandle((handle_ + handles - 1) % handles);
        case Qt::Key_PageDown:
            if (count > 0)
                Q_EMIT stampPicked((current_ + 1) % count);
            return;
        case Qt::Key_PageUp:
            if (count > 0)
                Q_EMIT stampPicked((current_ + count - 1) % count);
            return;
        case Qt::Key_Insert:
            return addOutline();
        case Qt::Key_Delete:
            if (current_ >= 0)
                Q_EMIT outlineDeleted(current_);
            return;
        case Qt::Key_Comma:
            return turn(-1, gesture_);
        case Qt::Key_Period:
            return turn(+1, gesture_);
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            return zoom(1.5, std::nullopt);
        case Qt::Key_Minus:
            return zoom(1 / 1.5, std::nullopt);
        case Qt::Key_0:
            return zoom(0, std::nullopt);
        default:
            event->ignore();
    }
}

}  // namespace gui
