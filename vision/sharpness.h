#pragma once

#include <opencv2/core.hpp>

namespace vision {

// How sharp a part of a photo is.
struct Sharpness {
    double blur_px = 0;    // deviation of the blur of its edges, where they are blurred least
    double moved_px = 0;   // length of a movement of camera or piece during the exposure; 0: none
    double moved_deg = 0;  // its direction, clockwise from the x axis, 0 <= x < 180
};

// Measures the blur of edges by blurring them once more, by a known amount: the more blurred they
// were the less steep they become (Zhuo and Sim, "Defocus map estimation from a single image",
// Pattern Recognition 44, 2011; here for both edges of a stroke, which blur into each other); a
// movement blurs the edges that it crosses and leaves those along it.
//   grey       CV_8UC1, mostly writing; not changed
//   stroke_px  width of the strokes
//   returns    all zero where there are too few edges to tell
// Throws std::invalid_argument if `grey` is empty or not CV_8UC1, or the width is not positive.
Sharpness measureSharpness(const cv::Mat& grey, double stroke_px);

}  // namespace vision
