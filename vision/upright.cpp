#include "vision/upright.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "vision/network_crop.h"
#include "vision/readability.h"
#include "vision/text_rows.h"

namespace vision {

namespace {

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

constexpr double most_of_one_line = 6;  // one line alone is never surer than this
// What the network's log odds weigh against the mean log odds of the letters read.
constexpr double network_weight = 0.25;

}  // namespace

double uprightLogOdds(const EnhancedStamp& stamp, UprightNetwork& network, TextLayout layout)
{
    std::vector<LineRow> rows = rowsOf(stamp.rectified);
    if (rows.empty() && layout == TextLayout::SingleLine)
        rows = {rowOfWhole(stamp.layer("grey"))};
    else if (rows.empty())
        rows = findTextRows(stamp.layer("flat"));
    double sum = 0;
    for (const LineRow& row : rows)
        sum += std::clamp(network.logOdds(networkCrop(stamp.layer("grey"), row).grey),
                          -most_of_one_line, most_of_one_line);
    return sum;
}

UprightStamp readRightWayUp(const RectifiedStamp& stamp, TextReader& reader, TextLayout layout,
                            UprightNetwork* network)
{
    UprightStamp first{enhanceStamp(stamp), {}};
    double told = network != nullptr ? uprightLogOdds(first.enhanced, *network, layout) : 0;
    if (told < 0)
        first.enhanced = enhanceStamp(turnedOver(stamp));
    told = std::abs(told);
    first.reading = readAs(reader, first.enhanced, layout);
    if (isSure(first.reading) || told >= surely_upright)
        return first;
    UprightStamp turned{enhanceStamp(turnedOver(first.enhanced.rectified)), {}};
    turned.reading = readAs(reader, turned.enhanced, layout);
    const double gain = readability(turned.reading) - readability(first.reading);
    return gain > network_weight * told ? turned : first;
}

}  // namespace vision
