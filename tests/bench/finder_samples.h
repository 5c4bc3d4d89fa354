#pragma once

#include <vector>

#include "tests/bench/labelled_photos.h"
#include "tests/bench/logistic_fit.h"
#include "vision/finder_network.h"

namespace bench {

// What the finder network takes for lines in a photo, each a sample of whether it is one; parts of
// a line are none.
void addFinderLines(const LabelledPhoto& labelled, int group, vision::FinderNetwork& network,
                    std::vector<Sample>& samples);

// Draws `count` photographs of marks at each sample level from `seed` on, and as many without.
void eachLevelPhoto(std::uint32_t seed, int count, const PhotoTask& task);

}  // namespace bench
