#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include <opencv2/core.hpp>

#include "models/maker_register.h"
#include "tests/bench/labelled_photos.h"
#include "vision/photo.h"

namespace bench {

// One picture of a set, in a file.
struct Picture {
    std::filesystem::path file;
    std::optional<cv::Rect> crop;      // only this part of it is read, as one line
    std::vector<LabelledLine> lines;   // corners in pixels of the picture, or of the crop
    bool all_labelled = true;          // false: other text may stand beside the labelled lines
    std::optional<std::string> maker;  // maker_id of the register; nullopt where there is none
};

struct BenchSet {
    std::string name;   // short, as an option: "dates"
    std::string title;  // as a heading
    std::vector<Picture> pictures;
    bool single_lines = false;  // pictures are crops of one line
};

// The picture as it is read: the file, or its crop. Throws vision::ImageError.
vision::Photo photoOf(const Picture& picture);

// The standing set of drawn marks at a contrast (see drawn_marks.h), drawn by two threads and
// written as PNG into `folder`, which must be there: as photos, and their lines one by one, laid
// straight by the truth with a quarter of their height around them, to judge readers apart from
// finding.
//   first   at most so many photos
std::vector<BenchSet> drawnSets(double contrast, const std::filesystem::path& folder,
                                std::size_t first);

// The lines of four hundred other marks of the kind, for figures that a hundred are too few for, as
// errors of calibration are: nothing is to be trained or tuned on them either.
BenchSet moreLines(double contrast, const std::filesystem::path& folder, std::size_t first);

// The samples below `folder`: pictures with NAME.truth.json beside them that tells of stamps; a set
// for each folder that holds some, named "samples" and "samples-FOLDER". Each line stands anywhere
// within its stamp's outline. What is lost or only traces in the truth's typed notation is not
// expected to be read; a maker that `known` does not hold is none to be ranked.
// Throws std::runtime_error naming a truth that is none.
std::vector<BenchSet> sampleSets(const std::filesystem::path& folder,
                                 const models::MakerRegister& known);

// Pictures that carry no mark: all below the folders beside which no truth tells of stamps.
BenchSet bareSet(const std::vector<std::filesystem::path>& folders);

// Photographs of which one line each, a date, is labelled: labels.tsv with a row of names, then
// file, text and the box's left, top, width and height. As whole photos, in which other text is
// neither right nor wrong, and as crops around the box with a tenth of its height added.
BenchSet datePhotos(const std::filesystem::path& folder);
BenchSet dateCrops(const std::filesystem::path& folder);

}  // namespace bench
