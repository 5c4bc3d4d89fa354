#include "vision/piece_grid.h"

#include <algorithm>
#include <cmath>

namespace vision {

namespace {

int clampedCell(float position, float cell_px, int count)
{
    return std::clamp(static_cast<int>(std::floor(position / cell_px)), 0, count - 1);
}

}  // namespace

PieceGrid::PieceGrid(const std::vector<LetterPiece>& pieces)
{
    cv::Point2f furthest{};
    centres_.reserve(pieces.size());
    for (const LetterPiece& piece : pieces) {
        centres_.push_back(piece.centre);
        furthest.x = std::max(furthest.x, piece.centre.x);
        furthest.y = std::max(furthest.y, piece.centre.y);
    }
    columns_ = static_cast<int>(furthest.x / cell_px_) + 1;
    rows_ = static_cast<int>(furthest.y / cell_px_) + 1;
    cells_.resize(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_));
    for (std::size_t i = 0; i < centres_.size(); ++i) {
        const int x = clampedCell(centres_[i].x, cell_px_, columns_);
        const int y = clampedCell(centres_[i].y, cell_px_, rows_);
        cells_[static_cast<std::size_t>(y * columns_ + x)].push_back(static_cast<int>(i));
    }
}

std::vector<int> PieceGrid::near(cv::Point2f point, float reach_px) const
{
    std::vector<int> found;
    const int x0 = clampedCell(point.x - reach_px, cell_px_, columns_);
    const int x1 = clampedCell(point.x + reach_px, cell_px_, columns_);
    const int y0 = clampedCell(point.y - reach_px, cell_px_, rows_);
    const int y1 = clampedCell(point.y + reach_px, cell_px_, rows_);
    for (int y = y0; y <= y1; ++y)
        for (int x = x0; x <= x1; ++x)
            for (const int i : cells_[static_cast<std::size_t>(y * columns_ + x)]) {
                const cv::Point2f d = centres_[static_cast<std::size_t>(i)] - point;
                if (d.dot(d) <= reach_px * reach_px)
                    found.push_back(i);
            }
    std::sort(found.begin(), found.end());
    return found;
}

}  // namespace vision
