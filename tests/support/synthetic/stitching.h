#pragma once

#include "tests/support/synthetic/surface.h"

namespace synthetic {

struct StitchOptions {
    cv::Vec3b colour_bgr{90, 120, 130};
    double length_px = 26;  // of one stitch
    double gap_px = 7;      // between two
    double width_px = 6;    // of the thread
};

// Sews along a straight line: the cloth is drawn in along it, the thread lies on top.
void sew(Surface& surface, cv::Point2d from, cv::Point2d to, const StitchOptions& options,
         cv::RNG& random);

// Sets a brass eyelet: a ring around a hole.
void setEyelet(Surface& surface, cv::Point2d centre, double radius_px, cv::RNG& random);

// Lays a second layer of cloth over everything right of `edge_x`, its folded edge there; the two
// are of one size.
//   returns  CV_32FC1: 1 where the lower layer is still in sight, else 0
cv::Mat coverWithHem(Surface& surface, const Surface& layer, double edge_x, double thickness_px,
                     cv::RNG& random);

}  // namespace synthetic
