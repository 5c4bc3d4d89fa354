#pragma once

#include <opencv2/core.hpp>

namespace vision {

// The tilt of the lines of text in a picture, clockwise in degrees, by the projection profile:
// along the true direction rows of ink and rows of ground stand out most sharply from each other
// (the criterion of Baird, The skew angle of printed documents, 1987; from memory).
//   grey      CV_8UC1, ink of either polarity; not changed
//   most_deg  tilts from -most_deg to most_deg are tried, over 0 to 45
//   returns   the tilt to a quarter of a degree; 0 where no direction stands out
// Throws std::invalid_argument if `grey` is empty or not CV_8UC1, or most_deg is out of range.
double tiltOfText(const cv::Mat& grey, double most_deg);

}  // namespace vision
