#pragma once

#include <vector>

#include "vision/letter_chains.h"
#include "vision/piece_grid.h"

namespace vision {

// Two pieces that may be neighbours in a line.
struct PiecePair {
    int a = 0, b = 0;
    float cost = 0;  // small for neighbours that look like letters of one word
};

// Grows chains of pieces of one level and polarity. Keeps references to what it is made from.
class ChainGrower {
public:
    ChainGrower(const std::vector<LetterPiece>& pieces, const PieceGrid& grid,
                const ChainOptions& options)
        : pieces_(pieces), grid_(grid), options_(options)
    {
    }

    // Each piece with its likeliest neighbours, likeliest pair first, no pair twice.
    std::vector<PiecePair> likelyPairs() const;

    // The longest chain that holds the pair: indices from one end to the other.
    std::vector<int> grow(const PiecePair& seed) const;

    // Unit vector from the first to the last member, by least squares on the centres.
    cv::Point2f directionOf(const std::vector<int>& chain) const;

private:
    const LetterPiece& piece(int i) const { return pieces_[static_cast<std::size_t>(i)]; }
    bool pairUp(int a, int b, PiecePair& pair) const;
    int nextAfter(const std::vector<int>& chain) const;

    const std::vector<LetterPiece>& pieces_;
    const PieceGrid& grid_;
    const ChainOptions& options_;
};

}  // namespace vision
