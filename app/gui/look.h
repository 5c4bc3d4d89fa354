#pragma once

#include <QColor>
#include <QPalette>
#include <QString>

// The window's own colours: a bench by a north window by day, a lamp by dusk.
namespace gui {

enum class Light { Day, Dusk };

struct Colours {
    QColor ground;   // the window
    QColor sheet;    // fields, tables, cells
    QColor table;    // around the picture of a stamp
    QColor ink;      // text
    QColor quiet;    // lesser text, still readable
    QColor rule;     // lines between things
    QColor mark;     // chosen rows, confirmed cells
    QColor on_mark;  // text on `mark`
    QColor hand;     // the cell in hand, focus
    QColor alarm;    // what went wrong
};

Colours coloursOf(Light light);

// Colours carried by a palette and read back by widgets that paint themselves.
QPalette paletteOf(const Colours& colours);
Colours coloursIn(const QPalette& palette);

QString styleSheetOf(const Colours& colours);

// Whether the desktop asks for a dark window.
Light lightOfDesktop(const QPalette& palette);

// Contrast of two opaque colours, 1 to 21, as WCAG 2.1 defines it.
double contrast(const QColor& a, const QColor& b);

}  // namespace gui
