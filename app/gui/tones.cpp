#include "app/gui/tones.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace gui {

namespace {

std::array<uchar, 256> tableOf(const Tones& tones)
{
    std::array<uchar, 256> table{};
    for (std::size_t i = 0; i < table.size(); ++i) {
        const double level = static_cast<double>(i) / 255;
        const double bent = std::pow(level, 1 / tones.gamma);
        const double stretched = (bent - 0.5) * tones.contrast + 0.5;
        table[i] = static_cast<uchar>(std::lround(std::clamp(stretched, 0.0, 1.0) * 255));
    }
    return table;
}

}  // namespace

Tones withContrast(Tones tones, int steps)
{
    tones.contrast = std::clamp(tones.contrast * std::pow(1.25, steps), 0.4, 4.0);
    return tones;
}

Tones withGamma(Tones tones, int steps)
{
    tones.gamma = std::clamp(tones.gamma * std::pow(1.15, steps), 0.4, 2.5);
    return tones;
}

QImage toned(QImage picture, const Tones& tones)
{
    const bool plain = tones == Tones{};
    const int channels =
        picture.format() == QImage::Format_Grayscale8 ? 1
        : picture.format() == QImage::Format_BGR888 || picture.format() == QImage::Format_RGB888
            ? 3
            : 0;
    if (plain || channels == 0)
        return picture;
    const std::array<uchar, 256> table = tableOf(tones);
    for (int y = 0; y < picture.height(); ++y) {
        uchar* row = picture.scanLine(y);
        for (int x = 0; x < picture.width() * channels; ++x)
            row[x] = table[row[x]];
    }
    return picture;
}

}  // namespace gui
