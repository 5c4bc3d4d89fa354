#pragma once

#include <QListView>

#include "app/gui/photo_queue.h"

namespace gui {

// The photos on the table as a row of cards.
class ToReadList : public QListView {
    Q_OBJECT

public:
    explicit ToReadList(PhotoQueue* queue, QWidget* parent = nullptr);

    void setCurrentPhoto(int place);

Q_SIGNALS:
    void opened(int place);

protected:
    void paintEvent(QPaintEvent* event) override;
};

}  // namespace gui
