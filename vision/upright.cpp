#include "vision/upright.h"

#include <utility>

namespace vision {

namespace {

// How much was read with certainty: letters, each counted by the probability of its line.
double readSurely(const models::Reading& reading)
{
    double sum = 0;
    for (const models::Line& line : reading.lines)
        sum += models::lineCertainty(line) * static_cast<double>(line.cells.size());
    return sum;
}

// A first reading this sure needs no second: letters on their head do not read so.
constexpr double sure_enough = 0.6;

bool isSure(const models::Reading& reading)
{
    for (const models::Line& line : reading.lines)
        if (models::lineCertainty(line) >= sure_enough && line.cells.size() >= 3)
            return true;
    return false;
}

models::Reading readAs(TextReader& reader, const EnhancedStamp& stamp, TextLayout layout)
{
    return layout == TextLayout::SingleLine ? reader.readLine(stamp) : reader.read(stamp);
}

}  // namespace

UprightStamp readRightWayUp(const RectifiedStamp& stamp, TextReader& reader, TextLayout layout)
{
    UprightStamp upright{enhanceStamp(stamp), {}};
    upright.reading = readAs(reader, upright.enhanced, layout);
    if (isSure(upright.reading))
        return upright;
    UprightStamp turned{enhanceStamp(turnedOver(stamp)), {}};
    turned.reading = readAs(reader, turned.enhanced, layout);
    return readSurely(turned.reading) > readSurely(upright.reading) ? turned : upright;
}

}  // namespace vision
