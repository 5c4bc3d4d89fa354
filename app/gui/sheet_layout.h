#pragma once

#include <QRectF>
#include <QSizeF>
#include <vector>

#include "models/reading.h"

namespace gui {

// Room there is for a stamp and its cells, in the window's own pixels.
struct SheetRoom {
    double width = 1000;
    double height = 400;       // that is in view; more is scrolled to
    double strip_height = 60;  // of one line's cells
    double least_cell = 16;    // narrowest cell that can still be read
    double margin = 12;        // left and right; a line's end is marked there
    double zoom = 1;           // times the size at which the stamp fits, 1 or more
};

// One line: a slice of the picture, its cells directly below it.
struct LineBand {
    QRectF source;   // of the rectified stamp; lines side by side have the same slice
    QRectF picture;  // where that slice is shown; empty where the line has no box
    QRectF strip;
    std::vector<QRectF> cells;  // inside the strip, left to right, never overlapping
};

struct SheetLayout {
    double scale = 1;                  // window pixels a rectified pixel
    double left = 0;                   // where rectified x = 0 is shown
    std::vector<LineBand> bands;       // one a line; all slices together are the whole picture
    QRectF tail_source, tail_picture;  // what of the picture is below the last line
    double top = 0, height = 0;        // of all that is shown
    double width = 0;                  // at least the room's; more when nearer
};

// Where a cell's letter stands in the rectified stamp; left == right: nobody knows.
struct CellExtent {
    double left = 0, right = 0;  // rectified px

    bool isKnown() const { return right > left; }
};

// Extents as the reader gave them, cut where one reaches into the next letter: engines' boxes
// overlap, and now and then one swallows its neighbours.
std::vector<CellExtent> cellExtents(const models::Line& line);

// Lays a stamp out at the full width, cut between its lines so that each cell stands under its
// letter. Lines that stand side by side share one slice, their cells below each other. A stamp that
// would not fit the height is made smaller, to six tenths at most, and then scrolled; one that
// leaves room stands a little above the middle. Cells without a place in the picture are set
// between their neighbours. Without a picture (an empty size) the lines stand below each other,
// room for a sentence above them.
SheetLayout layOutSheet(const QSizeF& rectified, const std::vector<models::Line>& lines,
                        const SheetRoom& room);

}  // namespace gui
