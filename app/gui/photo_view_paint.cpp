// The photo drawer, painted.
#include <QPainter>
#include <algorithm>
#include <opencv2/imgproc.hpp>

#include "app/gui/look.h"
#include "app/gui/photo_view.h"
#include "app/gui/picture.h"

namespace gui {

namespace {

constexpr double overview_px = 2400;  // longest side of the reduced copy
constexpr int loupe_half_px = 24;     // photo pixels shown on each side of the corner in hand
constexpr double loupe_zoom = 3;

}  // namespace

// A reduced copy, made once a photo: scaling from it is quick however large the photo is.
const cv::Mat& PhotoView::overview()
{
    if (!overview_.empty())
        return overview_;
    const double scale = std::min(1.0, overview_px / std::max(pixels_.cols, pixels_.rows));
    if (scale < 1)
        cv::resize(pixels_, overview_, {}, scale, scale, cv::INTER_AREA);
    else
        overview_ = pixels_;
    return overview_;
}

// The part in view, from the reduced copy as long as that has pixels enough. What was scaled for
// one place and size is kept for the next painting.
void PhotoView::paintPhoto(QPainter& painter)
{
    const double scale = fittingScale() * zoom_ * devicePixelRatioF();
    const double reduced = 1.0 * overview().cols / pixels_.cols;
    const bool enough = scale <= reduced;
    const cv::Mat& source = enough ? overview() : pixels_;
    const double source_scale = enough ? reduced : 1;
    const QRectF view(photoFromView({0, 0}), photoFromView(QPointF(width(), height())));
    const QRectF in_source(view.topLeft() * source_scale, view.size() * source_scale);
    const QRect part = in_source.toAlignedRect().intersected({0, 0, source.cols, source.rows});
    if (part.isEmpty())
        return;
    const QRectF target(viewFromPhoto(QPointF(part.topLeft()) / source_scale),
                        QSizeF(part.size()) / source_scale * fittingScale() * zoom_);
    const QSize size = (target.size() * devicePixelRatioF()).toSize();
    if (scaled_part_ != part || scaled_.size() != size) {
        scaled_part_ = part;
        const cv::Mat cut = source(cv::Rect(part.x(), part.y(), part.width(), part.height()));
        scaled_ = QPixmap::fromImage(pictureOf(cut, {size.width(), size.height()}));
    }
    painter.drawPixmap(target, scaled_, QRectF(scaled_.rect()));
}

void PhotoView::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.fillRect(rect(), coloursIn(palette()).table);
    if (pixels_.empty())
        return;
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setRenderHint(QPainter::Antialiasing);
    paintPhoto(painter);
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

}  // namespace gui
