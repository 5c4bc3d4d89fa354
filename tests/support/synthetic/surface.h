#pragma once

#include <opencv2/core.hpp>

namespace synthetic {

// A piece of cloth or leather as light and ink meet it, seen straight from above. All are of one
// size.
struct Surface {
    cv::Mat height;  // CV_32FC1, pixels above the ground
    cv::Mat albedo;  // CV_32FC3, BGR, linear light, 0 to 1
    cv::Mat take;    // CV_32FC1, 0 to 1: how readily ink is left here (tops of threads: 1)
    cv::Mat gloss;   // CV_32FC1, 0 to 1: how much it shines
};

// Dull, level and black.
Surface blankSurface(cv::Size size);

// An sRGB colour as linear light, 0 to 1 (IEC 61966-2-1).
cv::Vec3f linearColour(const cv::Vec3b& bgr);

}  // namespace synthetic
