#pragma once

#include <vector>

#include <opencv2/core.hpp>

namespace vision {

// A connected piece of ink about the size of a letter.
struct LetterPiece {
    std::vector<cv::Point2f> hull;  // convex, pixels of the picture searched
    cv::Point2f centre;             // of the smallest turned rectangle around it
    float size_px = 0;              // longest side of that rectangle
    float thin_px = 0;              // its shortest side
    float fill = 0;                 // share of the hull that is ink, 0 to 1
    float stroke_px = 0;            // mean stroke width
    float contrast = 0;             // mean step from ground to ink, in units of log grey level
    float separation = 0;  // that step over the spread of ink and ground about their own means
    bool light = false;    // lighter than its ground
    int level = 0;         // found in the picture reduced by 2 to the power of half this
};

struct PieceOptions {
    int min_letter_px = 10;      // smallest letter looked for, pixels of the picture
    int max_pieces = 2500;       // at one level and polarity; above it only the strongest are kept
    double min_contrast = 0.05;  // steps fainter than this are taken for noise, log grey level
};

// Finds pieces of ink of either polarity, at several reductions of the picture, half an
// octave apart. A letter is found at up to five levels: at the finest its edges are sharp, at the
// coarsest the weave is averaged away.
//   grey     CV_8UC1; not changed
//   returns  pieces in no special order, `level` and `light` telling them apart
// Throws std::invalid_argument if `grey` is empty or not CV_8UC1, or an option is out of range.
std::vector<LetterPiece> findLetterPieces(const cv::Mat& grey, const PieceOptions& options = {});

}  // namespace vision
