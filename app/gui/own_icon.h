#pragma once

#include <QColor>
#include <QIcon>

namespace gui {

// One of the window's own drawings (app/gui/icons/NAME.svg) in this colour, at any size. They are
// strokes alone: of SVG only paths with absolute M, L, C and Z, and their stroke-width, are read.
// An unknown name gives an empty icon.
QIcon ownIcon(const QString& name, const QColor& colour);

// The program's own sign, in its own colours.
QIcon programIcon();

}  // namespace gui
