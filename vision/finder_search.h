#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "vision/finder_lines.h"
#include "vision/finder_network.h"

namespace vision {

struct FinderSearchOptions {
    // The first look: photos over the least are reduced, at most to half their sides, so that
    // letters of 12 px stay of a size that the network knows, and never to more than the most: time
    // grows with the area.
    double least_megapixels = 1.5, most_megapixels = 6;
    // Of places with small letters that are then looked at closely, in all.
    double close_megapixels = 2;
    double close_under_px = 14;  // capitals smaller than it in the reduced photo are such
    CoreOptions cores{};
};

// Looks for lines of text in a whole photo: reduced to a bounded size, and again at a quarter and a
// sixteenth of that size's sides, so that letters from a few pixels to the height of the picture
// are of a size that the network knows; then, where the photo holds more than the reduced one
// shows, at places with small letters closely. Of answers to the same place the one is kept whose
// letters were nearest to the size that the network knows best.
//   grey     CV_8UC1, the photo; not changed
//   returns  lines in pixels of `grey`, likeliest first; their traits are of the look that found
//            them
// Throws std::invalid_argument if the photo is empty or not CV_8UC1, or an option is not positive.
std::vector<FinderLine> searchLines(const cv::Mat& grey, FinderNetwork& network,
                                    const FinderSearchOptions& options = {});

}  // namespace vision
