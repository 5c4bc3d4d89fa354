#pragma once

#include <array>
#include <vector>

#include <opencv2/core.hpp>

#include "vision/line_curve.h"
#include "vision/photo.h"

namespace vision {

// Corners clockwise from the top left as the writing sees it, in photo pixels.
using Quad = std::array<cv::Point2f, 4>;

// Where one stamp stands in the photo.
struct StampOutline {
    Quad corners;       // photo pixels; may be a general quadrilateral when drawn by hand
    double score = 0;   // 0 to 1, probability that it is a mark
    double up_deg = 0;  // how far the stamp's up is turned clockwise from the photo's, 0 <= x < 360
    std::vector<Quad> lines;  // its lines of text where they are known, in reading order
    // The courses of the lines, in photo pixels; as many as lines, a straight one's is empty, or
    // none at all where every line is straight. A bent line's corners stand around its course.
    std::vector<LineCurve> curves{};
};

struct LocateOptions {
    int max_stamps = 20;      // best kept
    int max_lines = 15;       // in all stamps together, best kept
    double min_score = 0.05;  // outlines below it are left out, 0 to 1; reading tells what is left
    int min_letter_px = 10;   // smallest letter looked for, in photo pixels
};

// Finds marks of one or more lines at any angle: letter-like pieces of ink (of either polarity)
// chained along baselines and grouped. Whether a mark stands on its head is not told from the
// outline: `up_deg` is settled by reading (see rectify.h).
//   returns  outlines, likeliest first; empty when none is found
// Throws std::invalid_argument if the photo is empty or an option is out of range.
std::vector<StampOutline> locateStamps(const Photo& photo, const LocateOptions& options = {});

// The outline a person drew: four corners clockwise from the stamp's top left, score 1, no lines.
// Throws std::invalid_argument if the corners do not make a convex quadrilateral of some size.
StampOutline outlineFromCorners(const Quad& corners);

// The same stamp taken for one that stands on its head: corners, `up_deg`, lines and courses.
StampOutline turnedOver(StampOutline outline);

// How far a quadrilateral's up is turned clockwise from the picture's, 0 <= x < 360, by the mean
// direction of its upper and lower side.
double upOf(const Quad& corners);

}  // namespace vision
