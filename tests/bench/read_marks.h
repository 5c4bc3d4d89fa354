#pragma once

#include <string>
#include <vector>

#include "app/flow/examine.h"
#include "models/candidates.h"
#include "models/reading.h"
#include "vision/locate.h"
#include "vision/photo.h"

namespace bench {

struct ReadLine {
    models::Line line;
    vision::Quad corners;  // photo pixels, clockwise from the line's own top left
};

struct ReadPicture {
    std::vector<ReadLine> lines;
    models::CandidateList candidates;  // all lines as marks of one item
};

// Adds the lines of the stamp's proposal to those read.
void addLines(const flow::StampExamination& stamp, ReadPicture& read);

// What every program of Weftmark makes of a picture that is loaded already.
//   single_line   the picture is a tight crop of one line of text
ReadPicture readMarks(const vision::Photo& photo, flow::Engines& engines, bool single_line = false);

// Upper case for A to Z, runs of white space squeezed to one space, none at the ends.
std::string folded(const std::string& text);

}  // namespace bench
