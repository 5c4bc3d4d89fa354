#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "vision/finder_table.h"

// A line of text as the finder network would answer it if it never erred.
struct TrueLine {
    cv::Point2d middle;      // pixels of the picture looked at; of an arch the middle of its course
    double turn_deg = 0;     // of reading, clockwise from the right
    double length_px = 200;  // from its first letter to its last, along its course
    double capital_px = 20;
    double arch_deg = 0;  // of the circle that it spans, arched up as it is read; 0: straight
};

// The table for a picture with these lines; `wavering` spreads its numbers by seeded noise.
vision::FinderTable drawnTable(cv::Size picture, const std::vector<TrueLine>& lines,
                               double wavering = 0);

// A point of the line: so far along it from its middle, so far across towards the feet.
cv::Point2d pointOf(const TrueLine& line, double along_px, double across_px);

// The direction of reading there, of length 1.
cv::Point2d readingOf(const TrueLine& line, double along_px);

// Around its letters, without more; points about two pixels apart.
std::vector<cv::Point2f> lettersOf(const TrueLine& line);
