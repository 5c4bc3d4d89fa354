#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "vision/finder_table.h"

namespace vision {

// One square of the network's answer that belongs to a line's core.
struct CorePlace {
    cv::Point2d at;         // pixel of the picture that was looked at
    double share = 0;       // 0 to 1, probability that it is core
    cv::Point2d doubled;    // cosine and sine of twice the line's turn there, as the network says
                            //   them: under 1 in length where it is not sure
    double log_height = 0;  // log2(height of a capital / FinderTable::unit_px)
};

// The places of one line, or of a part of one.
using LineCore = std::vector<CorePlace>;

struct CoreOptions {
    double from = 0.5;  // probability from which a place is core, over 0, under 1
    double peak = 0.5;  // at least one place of a core reaches it
};

// Places that touch, by side or corner, make one core. Empty where there are none.
// Throws std::invalid_argument if the table's pictures differ in type or size, or an option is out
// of range.
std::vector<LineCore> coresOf(const FinderTable& table, const CoreOptions& options = {});

// How the line of a core lies.
struct CoreShape {
    cv::Point2d along;     // of length 1, as a whole, within 90 degrees of the x axis
    double accord = 0;     // 0 to 1: how far the places agree on their turn, on the mean
    double height_px = 0;  // of a capital
    // The middle of the core from its beginning to its end: two points where it is straight, its
    // course where it is bent.
    std::vector<cv::Point2f> middle;

    bool isStraight() const { return middle.size() == 2; }
};

// The direction of length 1 of a doubled one, within 90 degrees of the x axis.
cv::Point2d halved(const cv::Point2d& doubled);

// The direction of a core of at least one place as a whole, of length 1, within 90 degrees of the x
// axis: its own axis where it is long enough to have one, else what the network says.
cv::Point2d alongOf(const LineCore& core);

// The shape of a core of at least one place. Straight is what leaves a straight line by less than
// 0.15 capital heights.
CoreShape shapeOf(const LineCore& core);

// Cores of which one goes on where another ends (same direction, capital height and row, with a gap
// under 2 capital heights), put together; the others as they were.
std::vector<LineCore> joinedCores(std::vector<LineCore> cores);

}  // namespace vision
