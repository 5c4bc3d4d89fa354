#include "app/gui/to_read_list.h"

#include <QApplication>
#include <QPainter>
#include <QStyledItemDelegate>

#include "app/gui/look.h"

namespace gui {

namespace {

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
        const QRect card = option.rect.adjusted(4, 4, -4, -4);
        painter->save();
        painter->setRenderHint(QPainter::SmoothPixmapTransform);
        painter->fillRect(card, chosen ? colours.mark : colours.ground);
        const QRect frame = card.adjusted(6, 6, -6, -em * 2 - 10);
        painter->fillRect(frame, colours.table);
        const QImage picture = index.data(Qt::DecorationRole).value<QImage>();
        if (!picture.isNull()) {
            QRect fit(QPoint(), picture.size().scaled(frame.size(), Qt::KeepAspectRatio));
            fit.moveCenter(frame.center());
            painter->drawImage(fit, picture);
        }
        const QString piece = index.data(PhotoQueue::piece_role).toString();
        if (!piece.isEmpty()) {
            const QRect ribbon(frame.left(), frame.top(), frame.width(), em + 4);
            painter->fillRect(ribbon, colours.sheet);
            painter->setPen(colours.ink);
            painter->drawText(ribbon.adjusted(4, 2, -4, 0), Qt::AlignLeft,
                              option.fontMetrics.elidedText(QString(QChar(0x29C9)) + " " + piece,
                                                            Qt::ElideMiddle, ribbon.width() - 8));
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

void ToReadList::paintEvent(QPaintEvent* event)
{
    QListView::paintEvent(event);
    if (model()->rowCount() > 0)
        return;
    QPainter painter(viewport());
    painter.setPen(coloursIn(palette()).ink);
    painter.drawText(viewport()->rect().adjusted(24, 8, -24, -8),
                     Qt::AlignCenter | Qt::TextWordWrap,
                     tr("No photos are on the table yet. Drop photos or a folder of them here, or "
                        "open them with Ctrl+O; they are read one after the other, and you go "
                        "through them with Ctrl+N."));
}

void ToReadList::setCurrentPhoto(int place)
{
    setCurrentIndex(model()->index(place, 0));
}

}  // namespace gui
