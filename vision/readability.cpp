#include "vision/readability.h"

#include <algorithm>
#include <cmath>

namespace vision {

namespace {

double logOdds(double certainty)
{
    const double p = std::clamp(certainty, 0.005, 0.995);
    return std::log(p / (1 - p));
}

}  // namespace

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

}  // namespace vision
