#pragma once

#include "tests/support/synthetic/surface.h"

namespace synthetic {

// The piece does not lie quite flat: slow waves, and once in a while a dent.
void letLieUneven(Surface& surface, double waviness, double finer, cv::RNG& random);

struct Crease {
    cv::Point2d through;   // a point on it
    double turn_deg = 90;  // its direction, clockwise from x
    double height_px = 7;  // how far it stands up
    double width_px = 16;  // of its rounded back
    double length_px = 0;  // it runs out so far from end to end; 0: over the whole piece
};

// Folds the surface along a gently bent line and rubs colour off the crease's back.
//   returns  CV_32FC1, 0 to 1: the share of ink that stays where it was
cv::Mat fold(Surface& surface, const Crease& crease, cv::RNG& random);

struct Stain {
    cv::Point2d centre;
    double radius_px = 80;
    double strength = 0.4;  // 0 to 1
    cv::Vec3b colour_bgr{40, 62, 84};
};

// Darkens a blotch with a tide line around it, as oil or dirty water leaves it.
void stain(Surface& surface, const Stain& stain, cv::RNG& random);

// Lets fibres stand off the cloth: `amount` 0 to 1.
void raiseFuzz(Surface& surface, const cv::Vec3b& colour_bgr, double amount, double finer,
               cv::RNG& random);

}  // namespace synthetic
