#pragma once

#include <cstdint>

#include "tests/support/synthetic/surface.h"
#include "tests/support/synthetic/typeset.h"

namespace synthetic {

struct InkOptions {
    cv::Vec3b colour_bgr{40, 34, 34};
    double fading = 0.2;      // 0 (fresh) to 1 (gone)
    double soaking = 0.4;     // 0 (only on the tops of threads) to 1 (soaked in)
    double patchiness = 0.3;  // 0 (even pressure) to 1 (half of the pad was dry)
    double smudge_px = 0;     // how far it was wiped along while wet
    double second_px = 0;     // how far a second, weaker impression lies beside the first; 0: none
    double speckle = 0;       // 0 to 1: small bare spots, where lint or dry spots kept ink away
    double rubbed = 0;  // 0 to 1: about the share rubbed off in patches, none of it left there
};

// How much ink lies where on a surface: CV_32FC1 of the surface's size, 0 to 1.
//   surface_from_cover  where the stamp's face was pressed on (a similarity)
// Throws std::invalid_argument if an option is out of range.
cv::Mat pressInk(const Surface& surface, const Typeset& face, const cv::Matx23d& surface_from_cover,
                 double letter_px, const InkOptions& options, std::uint32_t seed);

// The clean face where it was pressed on a surface of that size: CV_32FC1, 0 to 1.
cv::Mat placedFace(const Typeset& face, const cv::Matx23d& surface_from_cover, cv::Size surface);

// Presses the face into the surface, as a punch does, and darkens its ground a little.
void engrave(Surface& surface, const cv::Mat& placed_face, double depth_px);

// Colours a surface with ink of the given density.
void dye(Surface& surface, const cv::Mat& density, const cv::Vec3b& colour_bgr);

}  // namespace synthetic
