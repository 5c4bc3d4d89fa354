#pragma once

#include <cstdint>

#include "tests/support/synthetic/layout.h"
#include "tests/support/synthetic/surface.h"
#include "tests/support/synthetic_stamp.h"

namespace synthetic {

// The clean piece: woven or tanned, its edges rounded, lying not quite flat.
Surface makePiece(const Layout& layout, const SceneOptions& options);

// CV_32FC1 of the surface's size: 1 on the piece, 0 beside it.
cv::Mat pieceMask(const Layout& layout, const PieceOptions& piece, std::uint32_t seed);

// Folds it where the options say. Returns CV_32FC1, 0 to 1: the share of ink that stays.
cv::Mat creasePiece(Surface& surface, const Layout& layout, const SceneOptions& options);

// What came upon the print later: stains, a hem, stitches, eyelets, fuzz.
//   returns  CV_32FC1: 1 where the print is still in sight, else 0
cv::Mat finishPiece(Surface& surface, const Layout& layout, const SceneOptions& options);

}  // namespace synthetic
