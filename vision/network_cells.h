#pragma once

#include <string>

#include <opencv2/core.hpp>

#include "models/reading.h"
#include "vision/ctc_decode.h"
#include "vision/line_crop.h"
#include "vision/logistic_model.h"

namespace vision {

// What a decoded line's certainty is judged by, and a cell's.
struct DecodedLineTraits {
    double surest = 0;   // -log of the line's share left over
    double least = 0;    // log odds of its least sure place
    double mean = 0;     // mean log odds of its places
    double letters = 0;  // log of their number
    double bare = 0;     // share of the row before the first and behind the last place
    double gap = 0;      // log of the widest step from place to place over the usual one
};

//   steps   of the whole row
DecodedLineTraits traitsOf(const DecodedLine& line, double steps);
std::vector<double> termsOf(const DecodedLineTraits& traits);
// Of one place: its own log odds and what its line is like.
std::vector<double> termsOf(const DecodedPlace& place, const DecodedLineTraits& line);

// The models of a decoded line's and a place's certainty.
const LogisticModel& decodedLineModel();
const LogisticModel& decodedPlaceModel();

// The line of cells with calibrated certainties and extents in rectified pixels; without cells
// where nothing stands.
//   crop     where the decoded line was cut from
//   by       which reader vouches for the cells
models::Line lineFrom(const DecodedLine& decoded, const LineClasses& classes, const LineCrop& crop,
                      const cv::Rect2d& box, const std::string& by);

}  // namespace vision
