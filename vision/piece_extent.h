#pragma once

#include "vision/letter_pieces.h"

namespace vision {

// From where to where a piece reaches along a direction, in pixels from the picture's origin.
struct Extent {
    float low = 0, high = 0;

    float length() const { return high - low; }
    float middle() const { return (low + high) / 2; }
};

// `direction` is a unit vector.
inline Extent extentAlong(const LetterPiece& piece, cv::Point2f direction)
{
    Extent extent{1e9F, -1e9F};
    for (const cv::Point2f& p : piece.hull) {
        const float t = p.dot(direction);
        extent.low = t < extent.low ? t : extent.low;
        extent.high = t > extent.high ? t : extent.high;
    }
    extent.high += 1;  // a pixel has a width
    return extent;
}

// A quarter turn clockwise: down, for a line that runs along `direction`.
inline cv::Point2f normalOf(cv::Point2f direction)
{
    return {-direction.y, direction.x};
}

}  // namespace vision
