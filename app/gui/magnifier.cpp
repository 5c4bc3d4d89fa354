#include "app/gui/magnifier.h"

#include <QPainter>

#include "app/gui/letter_loupe.h"
#include "app/gui/look.h"

namespace gui {

Magnifier::Magnifier(QWidget* parent) : QWidget(parent)
{
    setObjectName("magnifier");
    setAccessibleName(tr("Magnifier"));
    setAttribute(Qt::WA_TransparentForMouseEvents);
    setFocusPolicy(Qt::NoFocus);
}

void Magnifier::showPart(const cv::Mat& pixels, const QRectF& part, bool mark_edges,
                         const QRect& room)
{
    pixels_ = pixels;
    part_ = part;
    mark_edges_ = mark_edges;
    setGeometry(room);
    if (!isVisible())
        raise();
    show();
    update();
}

void Magnifier::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    paintLoupe(painter, pixels_, part_, rect(), rect().center().x(), coloursIn(palette()),
               mark_edges_);
}

}  // namespace gui
