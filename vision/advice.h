#pragma once

#include <string>
#include <vector>

#include "vision/locate.h"
#include "vision/photo.h"

namespace vision {

struct AdviceOptions {
    double least_score = 0.5;     // of a mark that is worth advice
    double least_letter_px = 14;  // the reader errs more on smaller letters
    double most_blur = 0.1;       // deviation of the blur, in letter heights, 0 to 1
    double most_moved = 0.3;      // way moved during the exposure, in letter heights
    double most_clipped = 0.1;    // share of the mark's place that is quite white or black, 0 to 1
};

// What in the photo hinders reading its marks and how to photograph them better: a sentence with
// numbers and the remedy for each kind of trouble, of the mark that has it worst. Letters too small
// for the reader, blur, movement, light burnt out or lost. Of a mark whose lines nobody knows the
// size of the letters is not judged.
//   returns  empty when nothing hinders
// Throws std::invalid_argument if the photo has no pixels or an option is out of range.
std::vector<std::string> adviceOn(const Photo& photo, const std::vector<StampOutline>& stamps,
                                  const AdviceOptions& options = {});

}  // namespace vision
