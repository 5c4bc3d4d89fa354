#pragma once

#include <opencv2/core.hpp>

#include "tests/support/synthetic_stamp.h"

namespace synthetic {

// Where a stamp's contrast is measured, CV_8UC1 masks of the photo's size.
struct ContrastPlaces {
    cv::Mat ink;    // under the stamp's face, in sight, with at least half of its median ink
    cv::Mat cloth;  // bare, beside it: nearer than 0.7 letters
};

// What is known of one stamp in the photo, CV_32FC1 each, 0 to 1.
struct StampPlace {
    cv::Mat face;    // where its face was pressed
    cv::Mat ink;     // how much ink is left there
    cv::Mat others;  // the faces of the other stamps
    cv::Mat sight;   // where the piece's print is in sight
};

ContrastPlaces contrastPlaces(const StampPlace& place, double letter_px);

// How much darker the ink is than the cloth beside it, as a share of the cloth's brightness; below
// 0 if it is lighter.
double darkerBy(const cv::Mat& grey, const ContrastPlaces& places);

// How much the ink differs from the cloth beside it, as a share of the cloth's brightness.
//   grey  any single channel; as the picture holds it, not linear
double contrastOf(const cv::Mat& grey, const ContrastPlaces& places);

// Share of the stamp's face that shows less than half of its median ink: worn off, speckled or
// hidden. 0 to 1.
double lostShare(const StampPlace& place);

// CV_8UC1: where the stamp's face shows at least half of its median ink.
cv::Mat inkLeft(const StampPlace& place);

// Share of the face within a quad that shows ink, 0 to 1; 1 where no face is (a space).
double inkedShare(const Quad& quad, const StampPlace& place, const cv::Mat& ink_left);

// Height of a capital, digit or & in the photo, the mean of those in the truth; 0 if there is none.
double letterHeight(const StampTruth& truth);

}  // namespace synthetic
