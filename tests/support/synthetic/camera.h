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
};

// Photographs a scene of linear light (CV_32FC3, BGR): CV_8UC3, sRGB, the same size.
// Throws std::invalid_argument when an option is out of range.
cv::Mat photographed(const cv::Mat& radiance, const CameraOptions& options, std::uint32_t seed);

}  // namespace synthetic
