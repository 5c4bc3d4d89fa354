#pragma once

#include <cstdint>

#include "tests/support/synthetic/layout.h"
#include "tests/support/synthetic/surface.h"
#include "tests/support/synthetic/typeset.h"
#include "tests/support/synthetic_stamp.h"

namespace synthetic {

// One stamp pressed on the piece: its ink, and the truth about it as far as its place tells it.
struct Pressed {
    cv::Mat density;  // CV_32FC1 of the surface's size: ink, 0 to 1
    cv::Mat place;    // CV_32FC1 of the surface's size: its clean face where it was pressed
    cv::Vec3b colour_bgr;
    Typeset face;
    cv::Matx33d photo_from_cover;
    StampTruth truth;
};

// Letters that are punched in change the surface; ink does not yet.
Pressed pressStamp(Surface& surface, const Layout& layout, const StampOptions& stamp,
                   std::uint32_t seed);

// The truth with how much of each letter's place is still in sight, and what that leaves of the
// outline.
//   in_sight  CV_32FC1 of the photo's size, 1 where the print can be seen
StampTruth seenTruth(const Pressed& stamp, const cv::Mat& in_sight);

}  // namespace synthetic
