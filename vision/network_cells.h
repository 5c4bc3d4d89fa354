#pragma once

#include <string>
#include <vector>

#include <opencv2/core.hpp>

#include "models/reading.h"
#include "vision/ctc_decode.h"
#include "vision/line_crop.h"
#include "vision/logistic_model.h"

namespace vision {

// The line without what is seen beyond its row's ends: a letter stands within its row; what does
// not is something that the crop cuts, an eyelet or a seam, unless it is plainly a letter that the
// row missed.
//   crop     where the decoded line was cut from
DecodedLine withinRow(DecodedLine line, const LineCrop& crop);

// The line with a space in place of lost letters where far fewer of them were told than there is
// room for at the line's pitch: letters that are lost stand as close as those beside them, two
// columns of writing on one line do not. How likely it is that nothing stood there is a choice, not
// a measurement (`surely_a_space`).
DecodedLine withWideSpaces(DecodedLine line, const LineClasses& classes);

// What a decoded line's certainty is judged by.
struct DecodedLineTraits {
    double share = 0;   // log odds of the line among those that the search kept
    double seen = 0;    // and of it among all lines, by what is seen alone
    double bare = 0;    // share of the row before the first and behind the last place
    double gap = 0;     // log of the widest step from place to place over the usual one
    double unread = 0;  // 1 where a letter cannot be told or is lost: the line is not read whole
};

DecodedLineTraits traitsOf(const DecodedLine& line, const LineClasses& classes,
                           const LineCrop& crop);
std::vector<double> termsOf(const DecodedLineTraits& traits);

// The model of a decoded line's certainty. A place's share needs none: it was fitted too, and came
// out as it is.
const LogisticModel& decodedLineModel();

// The line of cells with calibrated certainties and extents in rectified pixels; without cells
// where nothing stands.
//   crop     where the decoded line was cut from
//   by       which reader vouches for the cells
models::Line lineFrom(const DecodedLine& decoded, const LineClasses& classes, const LineCrop& crop,
                      const cv::Rect2d& box, const std::string& by);

}  // namespace vision
