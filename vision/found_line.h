#pragma once

#include "vision/line_curve.h"
#include "vision/locate.h"

namespace vision {

// A line of text in a picture, whichever finder found it. Whether it stands on its head a finder
// does not tell: the line is taken to run to the right, within 90 degrees of the x axis.
struct FoundLine {
    Quad corners;          // around its letters, clockwise from its own top left
    LineCurve curve{};     // its course where it is bent
    double height_px = 0;  // of its letters, most of them
    double certainty = 0;  // 0 to 1, probability that it is text
};

// From the middle of the line's left side to that of its right side.
cv::Point2f spanOf(const FoundLine& line);

// The area that two quadrilaterals have in common, over the smaller one's, 0 to 1.
double commonShare(const Quad& a, const Quad& b);

}  // namespace vision
