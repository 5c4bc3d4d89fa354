#pragma once

#include <QListView>
#include <optional>

#include "app/gui/photo_queue.h"

namespace gui {

// The photos on the table as a row of cards. A card laid on another puts their photos together, a
// stamp on a card laid on another stamp makes views of one of them.
class ToReadList : public QListView {
    Q_OBJECT

public:
    explicit ToReadList(PhotoQueue* queue, QWidget* parent = nullptr);

    void setCurrentPhoto(int place);
    // The stamp whose outline on a card is at this point of the view; nothing where there is none.
    std::optional<StampPlace> stampAt(const QPoint& point) const;
    // What is carried when a stamp is taken off its card.
    QMimeData* mimeOf(const StampPlace& stamp) const;

Q_SIGNALS:
    void opened(int place);
    void stampLaidOnto(const StampPlace& stamp, const StampPlace& onto);

protected:
    void dataChanged(const QModelIndex& first, const QModelIndex& last,
                     const QList<int>& roles) override;
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void startDrag(Qt::DropActions actions) override;
    void dropEvent(QDropEvent* event) override;

private:
    std::optional<StampPlace> held_;  // under the mouse when it was pressed
};

}  // namespace gui
