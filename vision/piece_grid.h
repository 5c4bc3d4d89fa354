#pragma once

#include <vector>

#include "vision/letter_pieces.h"

namespace vision {

// Answers which pieces are near a point, without asking each of them. Keeps no reference to the
// pieces it was made from.
class PieceGrid {
public:
    explicit PieceGrid(const std::vector<LetterPiece>& pieces);

    // Indices of the pieces whose centre is within `reach_px` of `point`, in rising order.
    std::vector<int> near(cv::Point2f point, float reach_px) const;

private:
    float cell_px_ = 32;
    int columns_ = 1, rows_ = 1;
    std::vector<std::vector<int>> cells_;
    std::vector<cv::Point2f> centres_;
};

}  // namespace vision
