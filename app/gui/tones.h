#pragma once

#include <QImage>

namespace gui {

// How a picture is shown; only the showing changes, never the pixels that are read.
struct Tones {
    double contrast = 1;  // about middle grey, 0.4 to 4
    double gamma = 1;     // above 1 middle tones are lighter, 0.4 to 2.5

    bool operator==(const Tones&) const = default;
};

// One step further, kept in range.
Tones withContrast(Tones tones, int steps);
Tones withGamma(Tones tones, int steps);

// The picture in these tones.
//   picture  8-bit grey, or 8-bit colours (BGR or RGB); others come back as they are
QImage toned(QImage picture, const Tones& tones);

}  // namespace gui
