#include "models/line_boxes.h"

#include <algorithm>

namespace models {

bool hasBox(const Line& line)
{
    return line.box_px.width > 0 && line.box_px.height > 0;
}

double boxOverlap(const Box& a, const Box& b)
{
    const double height = std::min(a.y + a.height, b.y + b.height) - std::max(a.y, b.y);
    const double width = std::min(a.x + a.width, b.x + b.width) - std::max(a.x, b.x);
    if (height <= 0 || width <= 0)
        return 0;
    return height / std::min(a.height, b.height);
}

}  // namespace models
