#include "app/gui/to_read_list.h"

#include <QApplication>
#include <QDrag>
#include <QDropEvent>
#include <QMimeData>
#include <QPainter>
#include <QStyledItemDelegate>
#include <algorithm>

#include "app/gui/look.h"

namespace gui {

namespace {

constexpr const char* stamp_type = "application/x-weftmark-stamp";

// The parts of a card, from the room that its item has.
struct CardRooms {
    QRect card, frame;
};

CardRooms roomsOf(const QRect& item, int em)
{
    const QRect card = item.adjusted(4, 4, -4, -4);
    return {card, card.adjusted(6, 6, -6, -em * 2 - 10)};
}

QRect fitted(const QSize& picture, const QRect& frame)
{
    QRect fit(QPoint(), picture.scaled(frame.size(), Qt::KeepAspectRatio));
    fit.moveCenter(frame.center());
    return fit;
}

// A stamp's outline where the picture is shown, a little larger, so that it can be taken hold of.
QPolygonF outlineIn(const QRect& picture, const StampOnCard& stamp)
{
    constexpr double least_side = 10;
    QPolygonF outline;
    for (const QPointF& corner : stamp.outline)
        outline << QPointF(picture.left() + corner.x() * picture.width(),
                           picture.top() + corner.y() * picture.height());
    const QRectF box = outline.boundingRect();
    const double more = std::max(0.0, least_side - std::min(box.width(), box.height())) / 2;
    return more > 0 ? QPolygonF(box.adjusted(-more, -more, more, more)) : outline;
}

// A card: the picture where there is one, the name, a sign and the words for how far the photo is.
class CardDelegate : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const override
    {
        const int em = option.fontMetrics.height();
        return {em * 11, em * 10};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override
    {
        const Colours colours = coloursIn(QApplication::palette());
        const bool chosen = option.state.testFlag(QStyle::State_Selected);
        const int em = option.fontMetrics.height();
        const auto [card, frame] = roomsOf(option.rect, em);
        painter->save();
        painter->setRenderHint(QPainter::SmoothPixmapTransform);
        painter->fillRect(card, chosen ? colours.mark : colours.ground);
        painter->fillRect(frame, colours.table);
        const QImage picture = index.data(Qt::DecorationRole).value<QImage>();
        if (!picture.isNull()) {
            const QRect fit = fitted(picture.size(), frame);
            painter->drawImage(fit, picture);
            const auto queue = static_cast<const PhotoQueue*>(index.model());
            for (const StampOnCard& stamp : queue->stamps(index.row()))
                paintOutline(*painter, outlineIn(fit, stamp), stamp.is_view, colours);
        }
        const QString piece = index.data(PhotoQueue::piece_role).toString();
        if (!piece.isEmpty()) {
            const QRect ribbon(frame.left(), frame.top(), frame.width(), em + 4);
            painter->fillRect(ribbon, colours.sheet);
            painter->setPen(colours.ink);
            painter->drawText(
                ribbon.adjusted(4, 2, -4, 0), Qt::AlignLeft,
                option.fontMetrics.elidedText(piece, Qt::ElideMiddle, ribbon.width() - 8));
        }
        const QStringList words = index.data().toString().split('\n');
        QRect text(frame.left(), frame.bottom() + 4, frame.width(), em);
        painter->setPen(chosen ? colours.on_mark : colours.ink);
        painter->drawText(
            text, Qt::AlignLeft,
            option.fontMetrics.elidedText(words.value(0), Qt::ElideMiddle, text.width()));
        text.translate(0, em);
        painter->setPen(chosen ? colours.on_mark : colours.quiet);
        painter->drawText(text, Qt::AlignLeft, words.value(1));
        if (chosen) {
            painter->setPen(QPen(colours.hand, 2));
            painter->drawRect(card.adjusted(-2, -2, 2, 2));
        }
        painter->restore();
    }

private:
    // Light and dark, to be seen on any cloth; dashes are for a view of a stamp shown elsewhere.
    static void paintOutline(QPainter& painter, const QPolygonF& outline, bool is_view,
                             const Colours& colours)
    {
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(colours.sheet, 3));
        painter.drawPolygon(outline);
        painter.setPen(QPen(colours.hand, 1.5, is_view ? Qt::DashLine : Qt::SolidLine));
        painter.drawPolygon(outline);
    }
};

}  // namespace

ToReadList::ToReadList(PhotoQueue* queue, QWidget* parent) : QListView(parent)
{
    setObjectName("toReadList");
    setAccessibleName(tr("Photos still to read"));
    setModel(queue);
    setItemDelegate(new CardDelegate(this));
    setFlow(QListView::LeftToRight);
    setWrapping(true);
    setResizeMode(QListView::Adjust);
    setUniformItemSizes(true);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setMovement(QListView::Static);
    setDragEnabled(true);
    setAcceptDrops(true);
    setDropIndicatorShown(true);
    setDragDropMode(QAbstractItemView::DragDrop);
    connect(this, &QListView::activated, this,
            [this](const QModelIndex& index) { Q_EMIT opened(index.row()); });
}

// A photo off the table has no card; the one beside it is chosen instead.
void ToReadList::dataChanged(const QModelIndex& first, const QModelIndex& last,
                             const QList<int>& roles)
{
    QListView::dataChanged(first, last, roles);
    const auto queue = static_cast<const PhotoQueue*>(model());
    for (int place = first.row(); place <= last.row(); ++place) {
        if (isRowHidden(place) != queue->isOnTable(place))
            continue;
        setRowHidden(place, !queue->isOnTable(place));
        if (!isRowHidden(place) || currentIndex().row() != place)
            continue;
        const int after = queue->beside(place, +1);
        setCurrentPhoto(after >= 0 ? after : queue->beside(place, -1));
    }
}

void ToReadList::paintEvent(QPaintEvent* event)
{
    QListView::paintEvent(event);
    if (static_cast<const PhotoQueue*>(model())->onTable() > 0)
        return;
    QPainter painter(viewport());
    painter.setPen(coloursIn(palette()).ink);
    painter.drawText(viewport()->rect().adjusted(24, 8, -24, -8),
                     Qt::AlignCenter | Qt::TextWordWrap,
                     tr("No photos are on the table yet. Drop photos or a folder of them here, or "
                        "open them with Ctrl+O; they are read one after the other, and you go "
                        "through them with Ctrl+N."));
}

std::optional<StampPlace> ToReadList::stampAt(const QPoint& point) const
{
    const QModelIndex index = indexAt(point);
    const QImage picture = index.data(Qt::DecorationRole).value<QImage>();
    if (picture.isNull())
        return std::nullopt;
    const QRect fit =
        fitted(picture.size(), roomsOf(visualRect(index), fontMetrics().height()).frame);
    constexpr double reach_px = 5;  // beside a stamp so small on its card
    std::optional<StampPlace> near;
    for (const StampOnCard& stamp : static_cast<PhotoQueue*>(model())->stamps(index.row())) {
        const QPolygonF outline = outlineIn(fit, stamp);
        if (outline.containsPoint(point, Qt::OddEvenFill))
            return StampPlace{index.row(), stamp.id};
        const QRectF around =
            outline.boundingRect().adjusted(-reach_px, -reach_px, reach_px, reach_px);
        if (!near && around.contains(point))
            near = StampPlace{index.row(), stamp.id};
    }
    return near;
}

QMimeData* ToReadList::mimeOf(const StampPlace& stamp) const
{
    QMimeData* dragged = model()->mimeData({model()->index(stamp.place, 0)});
    dragged->setData(stamp_type, QByteArray::fromStdString(stamp.id));
    return dragged;
}

void ToReadList::mousePressEvent(QMouseEvent* event)
{
    held_ = stampAt(event->pos());
    QListView::mousePressEvent(event);
}

void ToReadList::startDrag(Qt::DropActions actions)
{
    if (!held_)
        return QListView::startDrag(actions);
    auto drag = new QDrag(this);
    drag->setMimeData(mimeOf(*held_));
    drag->exec(actions);
}

void ToReadList::dropEvent(QDropEvent* event)
{
    const auto onto = stampAt(event->position().toPoint());
    const QMimeData* dropped = event->mimeData();
    if (!onto || !dropped->hasFormat(stamp_type))
        return QListView::dropEvent(event);
    const int place = dropped->data(static_cast<PhotoQueue*>(model())->mimeTypes().front()).toInt();
    event->acceptProposedAction();
    stopAutoScroll();
    setState(NoState);
    viewport()->update();
    Q_EMIT stampLaidOnto({place, dropped->data(stamp_type).toStdString()}, *onto);
}

void ToReadList::setCurrentPhoto(int place)
{
    setCurrentIndex(model()->index(place, 0));
}

}  // namespace gui
