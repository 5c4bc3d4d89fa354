#pragma once

#include <limits>
#include <vector>

#include <opencv2/core.hpp>

#include "vision/letter_chains.h"
#include "vision/locate.h"
#include "vision/photo.h"

namespace vision {

// What is searched for lines of letters: a grey picture of bounded size.
struct SearchedPhoto {
    cv::Mat grey;     // CV_8UC1
    float scale = 1;  // photo pixels a pixel of it, at least 1
};

// Throws std::invalid_argument if the photo is empty.
//   most_pixels  area of what is searched, at most
SearchedPhoto reducedForSearch(const Photo& photo,
                               double most_pixels = std::numeric_limits<double>::infinity());

// Lines of letters in pixels of what is searched, likeliest first.
//   min_letter_px  smallest letter looked for, in photo pixels
std::vector<LetterChain> findLines(const SearchedPhoto& searched, int min_letter_px);

// From pixels of what is searched to photo pixels.
void scaleToPhoto(Quad& quad, float scale);

}  // namespace vision
