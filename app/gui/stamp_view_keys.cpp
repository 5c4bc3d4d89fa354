// The letters by keyboard.
#include <QInputMethodEvent>
#include <QKeyEvent>

#include "app/gui/cell_strip.h"
#include "app/gui/letter_keys.h"
#include "app/gui/stamp_view.h"

namespace gui {

bool StampView::event(QEvent* event)
{
    // The letters come before the window's own shortcuts.
    if (event->type() == QEvent::ShortcutOverride &&
        letterKey(*static_cast<QKeyEvent*>(event), as_it_is_)) {
        event->accept();
        return true;
    }
    return QScrollArea::event(event);
}

void StampView::keyPressEvent(QKeyEvent* event)
{
    const bool quoted = as_it_is_;
    const auto key = letterKey(*event, as_it_is_);
    if (!key) {
        event->ignore();
        return;
    }
    as_it_is_ = key->as_it_is;
    if (key->edit)
        Q_EMIT edited(*key->edit);
    else if (key->move)
        Q_EMIT moved(*key->move);
    else if (!key->text.isEmpty())
        Q_EMIT typed(quoted ? key->text : asWritten(key->text));
}

void StampView::inputMethodEvent(QInputMethodEvent* event)
{
    if (!event->commitString().isEmpty())
        Q_EMIT typed(asWritten(event->commitString()));
    event->accept();
}

QString StampView::asWritten(const QString& text) const
{
    return as_typed_ ? text : asCapitals(text);
}

QVariant StampView::inputMethodQuery(Qt::InputMethodQuery query) const
{
    if (query == Qt::ImEnabled)
        return true;
    if (query == Qt::ImCursorRectangle && place_.line < strips_.size())
        return strips_[place_.line]->geometry();
    return QScrollArea::inputMethodQuery(query);
}

}  // namespace gui
