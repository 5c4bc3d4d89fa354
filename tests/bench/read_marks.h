#pragma once

#include <string>
#include <vector>

#include "vision/locate.h"
#include "vision/photo.h"
#include "vision/text_reader.h"

namespace bench {

struct ReadLine {
    std::string text;      // plain text of the best guess
    double certainty = 0;  // 0 to 1
    vision::Quad corners;  // photo pixels
    double stamp_score = 0;
    models::Line line;
};

// The stages from locating to reading, as every program of Weftmark runs them, with one reader.
std::vector<ReadLine> readMarks(const vision::Photo& photo, vision::TextReader& reader);

// Upper case for A to Z, runs of white space squeezed to one space, none at the ends.
std::string folded(const std::string& text);

}  // namespace bench
