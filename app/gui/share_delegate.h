#pragma once

#include <QStyledItemDelegate>

namespace gui {

// Paints a share as a bar behind its number.
class ShareDelegate : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
};

}  // namespace gui
