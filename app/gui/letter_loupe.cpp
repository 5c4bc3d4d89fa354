#include "app/gui/letter_loupe.h"

#include <algorithm>

#include "app/gui/picture.h"

namespace gui {

namespace {

constexpr double least_height = 110, most_height = 300;  // window pixels
constexpr double gap = 18, most_times = 6;

}  // namespace

void paintLoupe(QPainter& painter, const cv::Mat& pixels, const QRectF& letter, const QRectF& room,
                double middle_x, const Colours& colours, bool mark_edges)
{
    const double height = std::min(room.height() - 2 * gap, most_height);
    if (height < least_height || pixels.empty())
        return;
    const double beside = std::max(letter.width(), letter.height() * 0.6) * 0.75;
    const QRectF wanted =
        letter.adjusted(-beside, -letter.height() * 0.12, beside, letter.height() * 0.12);
    const QRect part = wanted.toAlignedRect().intersected({0, 0, pixels.cols, pixels.rows});
    if (part.isEmpty())
        return;
    const double times =
        std::min({height / part.height(), most_times, room.width() * 0.6 / part.width()});
    const QSizeF size(part.width() * times, part.height() * times);
    const double left = std::clamp(middle_x - size.width() / 2, room.left() + gap,
                                   std::max(room.left() + gap, room.right() - size.width() - gap));
    const QRectF frame(QPointF(left, room.top() + gap), size);
    const double ratio = painter.device()->devicePixelRatioF();
    const cv::Mat cut = pixels(cv::Rect(part.x(), part.y(), part.width(), part.height()));
    painter.drawImage(frame, pictureOf(cut, {static_cast<int>(size.width() * ratio),
                                             static_cast<int>(size.height() * ratio)}));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colours.rule, 1));
    painter.drawRect(frame);
    if (!mark_edges)
        return;
    painter.setPen(QPen(colours.hand, 2));
    for (const double edge : {letter.left(), letter.right()}) {
        const double x = frame.left() + (edge - part.left()) * times;
        painter.drawLine(QPointF(x, frame.top() - 5), QPointF(x, frame.top() + 5));
        painter.drawLine(QPointF(x, frame.bottom() - 5), QPointF(x, frame.bottom() + 5));
    }
}

}  // namespace gui
