#include "app/gui/photo_view.h"

#include <QKeyEvent>
#include <QPainter>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "app/gui/look.h"
#include "app/gui/picture.h"

namespace gui {

namespace {

constexpr double reach_view_px = 14;  // how near the mouse must come to a corner
constexpr double most_zoom = 24;
constexpr int loupe_half_px = 24;  // photo pixels shown on each side of the corner in hand
constexpr double loupe_zoom = 3;

QPointF pointOf(const cv::Point2f& corner)
{
    return {corner.x, corner.y};
}

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
    zoom_ = 1;
    centre_ = QPointF(pixels.cols / 2.0, pixels.rows / 2.0);
    update();
}

void PhotoView::showOutlines(const std::vector<vision::Quad>& outlines, int current)
{
    outlines_ = outlines;
    if (current != current_)
        ++gesture_;
    current_ = current;
    tellAccessible();
    update();
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

// The whole photo at the size in which it fits: made once a size, whatever is painted over it.
const QPixmap& PhotoView::scaled()
{
    const double scale = fittingScale() * devicePixelRatioF();
    const cv::Size size(std::max(1, static_cast<int>(pixels_.cols * scale)),
                        std::max(1, static_cast<int>(pixels_.rows * scale)));
    if (scaled_.size() != QSize(size.width, size.height))
        scaled_ = QPixmap::fromImage(pictureOf(pixels_, size));
    return scaled_;
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

void PhotoView::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.fillRect(rect(), coloursIn(palette()).table);
    if (pixels_.empty())
        return;
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF shown(viewFromPhoto({0, 0}),
                       viewFromPhoto({1.0 * pixels_.cols, 1.0 * pixels_.rows}));
    if (zoom_ <= 1) {
        painter.drawPixmap(shown, scaled(), QRectF(scaled().rect()));
    } else {
        // Only what is in view is taken from the photo, so that a large one stays quick.
        const QRectF view(photoFromView({0, 0}), photoFromView(QPointF(width(), height())));
        const QRect part = view.toAlignedRect().intersected({0, 0, pixels_.cols, pixels_.rows});
        if (part.isEmpty())
            return;
        const cv::Mat cut = pixels_(cv::Rect(part.x(), part.y(), part.width(), part.height()));
        const QRectF target(
            viewFromPhoto(part.topLeft()),
            viewFromPhoto({part.x() + 1.0 * part.width(), part.y() + 1.0 * part.height()}));
        const double ratio = devicePixelRatioF();
        painter.drawImage(target, pictureOf(cut, {static_cast<int>(target.width() * ratio),
                                                  static_cast<int>(target.height() * ratio)}));
    }
    for (int i = 0; i < static_cast<int>(outlines_.size()); ++i)
        if (i != current_)
            paintOutline(painter, i);
    if (current_ >= 0) {
        paintOutline(painter, current_);
        paintLoupe(painter);
    }
}

void PhotoView::paintOutline(QPainter& painter, int index) const
{
    const Colours colours = coloursOf(Light::Day);
    const vision::Quad& corners =
        index == current_ && dragged_ ? *dragged_ : outlines_[static_cast<std::size_t>(index)];
    QPolygonF polygon;
    for (const cv::Point2f& corner : corners)
        polygon << viewFromPhoto(pointOf(corner));
    const bool in_hand = index == current_;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(QColor(255, 255, 255, 200), in_hand ? 4.5 : 3.5));
    painter.drawPolygon(polygon);
    painter.setPen(QPen(in_hand ? colours.hand : colours.mark, in_hand ? 2.5 : 1.5,
                        in_hand ? Qt::SolidLine : Qt::DashLine));
    painter.drawPolygon(polygon);
    painter.setBrush(QColor(255, 255, 255));
    // The stamp's own top left is told by a number beside it.
    painter.drawEllipse(polygon[0], 9, 9);
    painter.drawText(QRectF(polygon[0] - QPointF(9, 9), QSizeF(18, 18)), Qt::AlignCenter,
                     QString::number(index + 1));
    for (int i = 0; in_hand && i < 4; ++i) {
        const bool held = handle_ == i || handle_ == whole_outline;
        painter.setBrush(held && hasFocus() ? colours.hand : QColor(255, 255, 255));
        if (i > 0 || (held && hasFocus()))
            painter.drawRect(QRectF(polygon[i] - QPointF(5, 5), QSizeF(10, 10)));
    }
}

// The pixels about the corner in hand, larger, in the corner of the view that is farthest away.
void PhotoView::paintLoupe(QPainter& painter) const
{
    if (handle_ == whole_outline || !hasFocus())
        return;
    const vision::Quad& corners =
        dragged_ ? *dragged_ : outlines_[static_cast<std::size_t>(current_)];
    const QPointF corner = pointOf(corners[static_cast<std::size_t>(handle_)]);
    const double side = 2 * loupe_half_px * loupe_zoom;
    if (width() < 3 * side || height() < 1.5 * side)
        return;
    const bool to_right = viewFromPhoto(corner).x() < width() / 2.0;
    const QRectF frame(to_right ? width() - side - 10 : 10, 10, side, side);
    const QPoint from = (corner - QPointF(loupe_half_px, loupe_half_px)).toPoint();
    const QRect wanted(from, QSize(2 * loupe_half_px, 2 * loupe_half_px));
    const QRect part = wanted.intersected({0, 0, pixels_.cols, pixels_.rows});
    painter.fillRect(frame, Qt::black);
    if (!part.isEmpty()) {
        const cv::Mat cut = pixels_(cv::Rect(part.x(), part.y(), part.width(), part.height()));
        const QRectF target(
            frame.topLeft() + QPointF(part.topLeft() - wanted.topLeft()) * loupe_zoom,
            QSizeF(part.size()) * loupe_zoom);
        painter.drawImage(target, pictureOf(cut));
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(coloursOf(Light::Day).hand, 2));
    painter.drawRect(frame);
    painter.setPen(QPen(Qt::white, 1));
    painter.drawLine(frame.center() - QPointF(9, 0), frame.center() + QPointF(9, 0));
    painter.drawLine(frame.center() - QPointF(0, 9), frame.center() + QPointF(0, 9));
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
    }
}

void PhotoView::mouseMoveEvent(QMouseEvent* event)
{
    if (!dragged_)
        return;
    const QPointF by = photoFromView(event->position()) - grip_;
    const auto moved = movedHandle(outlines_[static_cast<std::size_t>(current_)], handle_, by,
                                   {pixels_.cols, pixels_.rows});
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
