#include "app/gui/photo_view.h"

#include <QKeyEvent>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "app/gui/picture.h"

namespace gui {

namespace {

constexpr double reach_view_px = 14;  // how near the mouse must come to a corner
constexpr double most_zoom = 24;

}  // namespace

PhotoView::PhotoView(QWidget* parent) : QWidget(parent)
{
    setObjectName("photoView");
    setAccessibleName(tr("Photo with the outlines of its stamps"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
}

void PhotoView::showPhoto(const cv::Mat& pixels)
{
    pixels_ = pixels;
    scaled_ = {};
    overview_.release();
    zoom_ = 1;
    centre_ = QPointF(pixels.cols / 2.0, pixels.rows / 2.0);
    update();
}

void PhotoView::showOutlines(const std::vector<vision::Quad>& outlines, int current)
{
    const auto hand = static_cast<std::size_t>(current);
    if (current >= 0 && current == current_ && hand < outlines_.size() && hand < outlines.size())
        holdCorner(outlines_[hand], outlines[hand]);
    outlines_ = outlines;
    if (current != current_)
        ++gesture_;
    current_ = current;
    tellAccessible();
    update();
}

// A stamp read the other way up has the same corners, counted from another one: the corner in hand
// stays in hand.
void PhotoView::holdCorner(const vision::Quad& before, const vision::Quad& after)
{
    if (handle_ == whole_outline)
        return;
    for (std::size_t by = 1; by < after.size(); ++by) {
        vision::Quad counted = before;
        std::rotate(counted.rbegin(), counted.rbegin() + static_cast<std::ptrdiff_t>(by),
                    counted.rend());
        if (counted == after) {
            handle_ = (handle_ + static_cast<int>(by)) % static_cast<int>(after.size());
            return;
        }
    }
}

void PhotoView::tellAccessible()
{
    const int count = static_cast<int>(outlines_.size());
    setAccessibleDescription(
        current_ < 0
            ? tr("no stamps outlined")
            : tr("stamp %1 of %2, %3").arg(current_ + 1).arg(count).arg(handleWord(handle_)));
}

double PhotoView::fittingScale() const
{
    if (pixels_.empty())
        return 1;
    return std::min(1.0 * width() / pixels_.cols, 1.0 * height() / pixels_.rows);
}

QPointF PhotoView::viewFromPhoto(const QPointF& point) const
{
    return QPointF(width() / 2.0, height() / 2.0) + (point - centre_) * fittingScale() * zoom_;
}

QPointF PhotoView::photoFromView(const QPointF& point) const
{
    return centre_ + (point - QPointF(width() / 2.0, height() / 2.0)) / (fittingScale() * zoom_);
}

void PhotoView::zoom(double factor, std::optional<QPointF> about)
{
    const double before = zoom_;
    zoom_ = std::clamp(zoom_ * factor, 1.0, most_zoom);
    if (about)
        centre_ += (*about - QPointF(width() / 2.0, height() / 2.0)) / fittingScale() *
                   (1 / before - 1 / zoom_);
    else if (current_ >= 0 && zoom_ > 1)
        centre_ = handle_ == whole_outline
                      ? (pointOf(outlines_[static_cast<std::size_t>(current_)][0]) +
                         pointOf(outlines_[static_cast<std::size_t>(current_)][2])) /
                            2
                      : pointOf(outlines_[static_cast<std::size_t>(current_)]
                                         [static_cast<std::size_t>(handle_)]);
    if (zoom_ <= 1)
        centre_ = QPointF(pixels_.cols / 2.0, pixels_.rows / 2.0);
    update();
}

void PhotoView::resizeEvent(QResizeEvent*)
{
    update();
}

void PhotoView::mousePressEvent(QMouseEvent* event)
{
    setFocus(Qt::MouseFocusReason);
    const QPointF point = photoFromView(event->position());
    const double reach = reach_view_px / (fittingScale() * zoom_);
    int best = -1, handle = 0;
    for (int i = 0; i < static_cast<int>(outlines_.size()); ++i) {
        const auto at = handleAt(outlines_[static_cast<std::size_t>(i)], point, reach);
        if (at && (best < 0 || i == current_)) {
            best = i;
            handle = *at;
        }
    }
    if (best < 0)
        return;
    if (best != current_)
        Q_EMIT stampPicked(best);
    pickHandle(handle);
    if (current_ == best) {
        dragged_ = outlines_[static_cast<std::size_t>(best)];
        grip_ = point;
        turning_ = event->modifiers().testFlag(Qt::ShiftModifier);
    }
}

void PhotoView::mouseMoveEvent(QMouseEvent* event)
{
    if (!dragged_)
        return;
    const vision::Quad& corners = outlines_[static_cast<std::size_t>(current_)];
    const QPointF at = photoFromView(event->position());
    const QSize photo(pixels_.cols, pixels_.rows);
    const auto moved = turning_ ? turnedOutline(corners, angleBetween(corners, grip_, at), photo)
                                : movedHandle(corners, handle_, at - grip_, photo);
    if (moved)
        dragged_ = moved;
    update();
}

void PhotoView::mouseReleaseEvent(QMouseEvent*)
{
    if (!dragged_)
        return;
    const vision::Quad corners = *dragged_;
    dragged_.reset();
    if (corners != outlines_[static_cast<std::size_t>(current_)])
        Q_EMIT outlineMoved(current_, corners, -1);
    update();
}

void PhotoView::wheelEvent(QWheelEvent* event)
{
    zoom(std::pow(1.2, event->angleDelta().y() / 120.0), event->position());
}

void PhotoView::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    update();
}

void PhotoView::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    ++gesture_;
    update();
}

}  // namespace gui
