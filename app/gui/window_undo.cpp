#include "app/gui/window_undo.h"

#include <QKeyEvent>

namespace gui {

namespace {

// Keeps a field from claiming the keys before the window hears them.
class UndoPasser : public QObject {
public:
    using QObject::QObject;

    bool eventFilter(QObject* watched, QEvent* event) override
    {
        if (event->type() != QEvent::ShortcutOverride)
            return QObject::eventFilter(watched, event);
        const auto key = static_cast<QKeyEvent*>(event);
        if (!key->matches(QKeySequence::Undo) && !key->matches(QKeySequence::Redo))
            return QObject::eventFilter(watched, event);
        event->ignore();
        return true;
    }
};

}  // namespace

void leaveUndoToWindow(QWidget* field)
{
    field->installEventFilter(new UndoPasser(field));
}

}  // namespace gui
