#pragma once

#include "tests/support/synthetic/layout.h"
#include "tests/support/synthetic/surface.h"
#include "tests/support/synthetic_stamp.h"

namespace synthetic {

// Fixes a metal plate with rounded corners and two rivets on the surface.
void fixPlate(Surface& surface, const Layout& layout, const PlateOptions& plate, cv::RNG& random);

// Prints the piece's pattern on it, in the tops of its threads.
void printPattern(Surface& surface, const PieceOptions& piece, cv::RNG& random);

}  // namespace synthetic
