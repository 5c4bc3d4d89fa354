#pragma once

#include <opencv2/core.hpp>

namespace vision {

// What the finder network says of a picture: one answer for each square of step_px x step_px of its
// pixels, CV_32FC1 each, all of one size. All but `core` mean something only on a line's core: a
// band half a capital high along the middle of a line of text, from its first to its last letter,
// the spaces between words included, its ends drawn in by drawn_in capital heights.
struct FinderTable {
    static constexpr int step_px = 4;
    static constexpr double drawn_in = 0.15;  // capital heights
    static constexpr double unit_px = 16;     // the capital height whose logarithm is 0

    cv::Mat core;        // log odds that the square belongs to a line's core
    cv::Mat log_height;  // log2(height of the line's capitals in pixels / unit_px)
    // Of twice the angle by which the line is turned clockwise from level. A line that stands on
    // its head is not told from one that does not.
    cv::Mat cosine, sine;

    // The picture's pixel at the middle of a square.
    static cv::Point2d pixelOf(int column, int row)
    {
        constexpr double middle = (step_px - 1) / 2.0;
        return {step_px * column + middle, step_px * row + middle};
    }
};

}  // namespace vision
