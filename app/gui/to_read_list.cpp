#include "app/gui/to_read_list.h"

namespace gui {

ToReadList::ToReadList(PhotoQueue* queue, QWidget* parent) : QListView(parent)
{
    setObjectName("toReadList");
    setAccessibleName(tr("Photos still to read"));
    setModel(queue);
    setViewMode(QListView::IconMode);
    setFlow(QListView::LeftToRight);
    setMovement(QListView::Static);
    setResizeMode(QListView::Adjust);
    setWrapping(true);
    setWordWrap(true);
    setUniformItemSizes(true);
    setIconSize(cardSize() - QSize(16, fontMetrics().height() * 3));
    setGridSize(cardSize());
    connect(this, &QListView::activated, this,
            [this](const QModelIndex& index) { Q_EMIT opened(index.row()); });
}

QSize ToReadList::cardSize() const
{
    const int em = fontMetrics().height();
    return {em * 10, em * 9};
}

void ToReadList::setCurrentPhoto(int place)
{
    setCurrentIndex(model()->index(place, 0));
}

}  // namespace gui
