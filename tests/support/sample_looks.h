#pragma once

#include "tests/support/synthetic_stamp.h"

// What the sample scenes have in common.
namespace looks {

inline const cv::Vec3b khaki{98, 138, 154}, drab{98, 122, 132}, olive{88, 112, 112},
    sand{122, 152, 168}, grey_blue{138, 126, 116}, undyed{148, 168, 176}, tan_leather{72, 106, 148},
    chestnut{50, 74, 108};
inline const cv::Vec3b black_ink{38, 32, 32}, blue_black_ink{64, 38, 36}, violet_ink{88, 40, 62};

inline synthetic::InkOptions worn(const cv::Vec3b& colour_bgr, double fading, double soaking,
                                  double patchiness)
{
    return {
        .colour_bgr = colour_bgr, .fading = fading, .soaking = soaking, .patchiness = patchiness};
}

// A camera held in the hand, near: little of the picture's height is quite sharp.
inline synthetic::CameraOptions nearCamera(double exposure, double defocus_px = 1.4)
{
    return {.exposure = exposure, .noise = 0.4, .defocus_px = defocus_px};
}

// A shadow of whoever holds the camera, at one side.
inline synthetic::ShadowOptions bystander(double x_px, double turn_deg, double depth = 0.35)
{
    return {
        .x_px = x_px, .turn_deg = turn_deg, .width_px = 420, .softness_px = 110, .depth = depth};
}

}  // namespace looks
