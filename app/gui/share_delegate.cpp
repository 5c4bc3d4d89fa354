#include "app/gui/share_delegate.h"

#include <QApplication>
#include <QPainter>

#include "app/gui/candidate_model.h"
#include "app/gui/look.h"
#include "app/gui/year_bars.h"

namespace gui {

void ShareDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const
{
    QStyledItemDelegate::paint(painter, option, index);
    const Colours colours = coloursIn(QApplication::palette());
    const double share = index.data(CandidateModel::share_role).toDouble();
    QRectF bar = QRectF(option.rect).adjusted(6, 0, -6, -2);
    bar.setTop(bar.bottom() - 3);
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    paintShare(*painter, bar, share, chosen ? colours.on_mark : colours.rule,
               chosen ? colours.on_mark : colours.mark);
}

}  // namespace gui
