#pragma once

#include "tests/support/synthetic/surface.h"

namespace synthetic {

struct LightOptions {
    double from_deg = 215;  // where the light comes from, clockwise from the right; 215: upper left
    double elevation_deg = 38;  // above the table; low is raking
    double ambient = 0.35;      // 0 to 1, share of light from all around
    double relief = 1;          // exaggerates (above 1) or flattens the surface's own height
};

// How a surface's shape meets the light, CV_32FC1 each.
struct Shading {
    cv::Mat amount;  // of light that falls on it, 1 on level ground in full light
    cv::Mat shine;   // what it mirrors
};

// Throws as `lit` does.
Shading shadingOf(const Surface& surface, const LightOptions& options);

// A surface's colours under its light.
cv::Mat shaded(const cv::Mat& albedo, const Shading& shading);

// Lights a surface: CV_32FC3, BGR, linear, about 1 for white in full light.
// Throws std::invalid_argument for an elevation outside 5 to 90 or an ambient share outside 0 to 1.
cv::Mat lit(const Surface& surface, const LightOptions& options);

}  // namespace synthetic
