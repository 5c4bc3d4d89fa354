#include "vision/upright.h"

#include <algorithm>
#include <cmath>

namespace vision {

namespace {

double logOdds(double certainty)
{
    const double p = std::clamp(certainty, 0.005, 0.995);
    return std::log(p / (1 - p));
}

// Mean log odds of the letters. Of a stamp on its head a few may read as others, most do not.
double readability(const models::Reading& reading)
{
    double sum = 0;
    int count = 0;
    for (const models::Line& line : reading.lines)
        for (const models::Cell& cell : line.cells) {
            const bool space = !cell.alternatives.empty() && cell.alternatives[0].text == " ";
            if (space)
                continue;
            sum += logOdds(cell.alternatives.empty() ? 0 : cell.alternatives[0].certainty);
            ++count;
        }
    return count > 0 ? sum / count : logOdds(0);
}

// A first reading this sure needs no second: letters on their head do not read so.
constexpr double sure_enough = 0.8;

bool isSure(const models::Reading& reading)
{
    return std::any_of(reading.lines.begin(), reading.lines.end(), [](const models::Line& line) {
        return models::lineCertainty(line) >= sure_enough && line.cells.size() >= 5;
    });
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
    return readability(turned.reading) > readability(upright.reading) ? turned : upright;
}

}  // namespace vision
