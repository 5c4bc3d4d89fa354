#pragma once

#include <cstdint>

#include <opencv2/core.hpp>

namespace synthetic {

struct CameraOptions {
    double exposure = 1;          // brightness against a well-exposed picture
    cv::Vec3f cast_bgr{1, 1, 1};  // colour of the light as the white balance left it
    double blur_px = 0.7;         // deviation of the lens's blur
    double noise = 0.5;           // 0 (none) to 1 (a dark room)
    double sharpening = 0.5;      // 0 to 1, as cameras do to their pictures
    double vignetting = 0.25;     // 0 to 1, light lost in the corners
    int jpeg_quality = 90;        // 1 to 100; 0 leaves the picture uncompressed
    double defocus_px = 0;        // deviation of the further blur at the photo's top and bottom
    double resolution = 1;  // 0.1 to 1: pixels a side that the sensor had, against the photo's
};

// What the sensor gathers before noise: the lens's blur, lost corners, exposure and cast, at the
// sensor's resolution. Linear in the radiance (CV_32FC3, BGR), whose size it keeps.
cv::Mat gathered(const cv::Mat& radiance, const CameraOptions& options);

// Gathered light as the camera writes it, sharpened: CV_32FC3, 0 to 255, without noise.
cv::Mat developed(const cv::Mat& light, const CameraOptions& options);

// CV_32FC1: the share of light that each place of the photo keeps, 1 in its middle.
cv::Mat vignette(cv::Size size, double vignetting);

// Photographs a scene of linear light (CV_32FC3, BGR): CV_8UC3, sRGB, the same size.
// Throws std::invalid_argument when an option is out of range.
cv::Mat photographed(const cv::Mat& radiance, const CameraOptions& options, std::uint32_t seed);

}  // namespace synthetic
