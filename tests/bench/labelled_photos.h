#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "tests/support/synthetic_stamp.h"
#include "vision/locate.h"
#include "vision/photo.h"

namespace bench {

struct LabelledLine {
    std::string text;
    vision::Quad corners;  // photo pixels, clockwise from the line's own top left
};

struct LabelledPhoto {
    std::string name;
    vision::Photo photo;
    std::vector<LabelledLine> lines;  // empty: nothing stands on it
};

// A drawn photo with the lines of its truth.
LabelledPhoto labelled(const synthetic::DrawnPhoto& drawn, std::string name);

using PhotoTask = std::function<void(const LabelledPhoto&)>;

// Draws `count` scenes from `seed` on, each in three wears and every third bare, one at a time.
void eachDrawnPhoto(std::uint32_t seed, int count, const PhotoTask& task);

// Draws `count` marks of the kind of the standing set (see drawn_marks.h) from `seed` on, each in
// five contrasts from 0.10 to 0.40.
void eachOtherMark(std::uint32_t seed, int count, const PhotoTask& task);

// The pictures of a folder. Where it holds labels.tsv, its rows are: file name, three fields that
// are passed over, then for each line its text and its corners "x,y;x,y;x,y;x,y;". Without it all
// pictures below the folder are taken as bare.
void eachPhotoOf(const std::filesystem::path& folder, const PhotoTask& task);

// A line laid straight at its own size, with a quarter of its height around it, and where its
// corners come to lie then.
cv::Mat laidStraight(const cv::Mat& pixels, const vision::Quad& corners);
vision::Quad laidPlace(const vision::Quad& corners);

// Common area over joint area, 0 to 1.
double overlapOf(const vision::Quad& a, const vision::Quad& b);

}  // namespace bench
