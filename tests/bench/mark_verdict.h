#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "tests/support/synthetic_stamp.h"
#include "vision/locate.h"

namespace bench {

// How the outlines found in a photo lie to the one mark that is on it. A letter counts if at least
// half of it is in sight and a quarter inked; an outline is the mark's if a fifth of it lies on it.
struct MarkVerdict {
    bool covered = false;         // nine tenths of the letters' area lie within the mark's outlines
    bool every_letter = false;    // and of each letter's
    bool tight = false;           // the mark's outlines have at most 2.5 times its own area
    std::size_t false_marks = 0;  // outlines that are not the mark's
    std::size_t best = 0;         // the outline that covers most of it; outlines.size() if none

    bool found() const { return covered && tight; }
};

MarkVerdict judgeOutlines(const synthetic::StampTruth& truth, cv::Size photo,
                          const std::vector<vision::StampOutline>& outlines);

// A mark that reads the same on its head, or as another of the same letters (H, I, N, O, S, X, Z,
// 0, 1, 8 and signs): nobody can tell which way is up.
bool readsBothWays(const std::vector<std::string>& lines);

}  // namespace bench
