#pragma once

#include <QWidget>

namespace gui {

// Undo and redo in this field are the window's, which undoes everything in its order; a field's
// own would not know of the rest.
void leaveUndoToWindow(QWidget* field);

}  // namespace gui
