#include "tests/support/sample_scenes.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

std::string folderOf(SampleLevel level)
{
    switch (level) {
        case SampleLevel::Easy:
            return "easy";
        case SampleLevel::Medium:
            return "medium";
        case SampleLevel::Hard:
            return "hard";
        case SampleLevel::NotStamps:
            break;
    }
    return "not_stamps";
}

LevelNumbers numbersOf(SampleLevel level)
{
    switch (level) {
        case SampleLevel::Easy:
            return {{30, 50}, {0.35, 0.75}, {0, 0.15}, {0, 12}, {1, 2}};
        case SampleLevel::Medium:
            return {{26, 42}, {0.25, 0.35}, {0, 0.40}, {0, 45}, {1, 3}};
        case SampleLevel::Hard:
            return {{24, 32}, {0.15, 0.25}, {0, 0.60}, {0, 45}, {1, 3}};
        case SampleLevel::NotStamps:
            break;
    }
    throw std::invalid_argument("pictures without a stamp have no level");
}

double tiltOf(const synthetic::StampTruth& stamp)
{
    const double turn = std::fmod(stamp.up_deg, 180);
    return std::min(turn, 180 - turn);
}

std::vector<SampleScene> sampleScenes()
{
    std::vector<SampleScene> all = easySamples();
    for (const auto& more : {mediumSamples(), hardSamples(), notStampSamples()})
        all.insert(all.end(), more.begin(), more.end());
    return all;
}
