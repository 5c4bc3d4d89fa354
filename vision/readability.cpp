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

struct Told {
    double sum = 0;
    int count = 0;
};

Told toldBy(const models::Reading& reading)
{
    Told told;
    for (const models::Line& line : reading.lines)
        for (const models::Cell& cell : line.cells) {
            if (!cell.alternatives.empty() && cell.alternatives[0].text == " ")
                continue;
            told.sum += logOdds(cell.alternatives.empty() ? 0 : cell.alternatives[0].certainty);
            ++told.count;
        }
    return told;
}

}  // namespace

double readability(const models::Reading& reading)
{
    const Told told = toldBy(reading);
    return told.count > 0 ? told.sum / told.count : logOdds(0);
}

double toldLetters(const models::Reading& reading)
{
    return toldBy(reading).sum;
}

}  // namespace vision
