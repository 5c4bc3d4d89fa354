#pragma once

#include <vector>

#include "vision/enhance.h"
#include "vision/locate.h"
#include "vision/photo.h"
#include "vision/rectify.h"
#include "vision/text_reader.h"
#include "vision/upright_network.h"

namespace vision {

// The ways in which a picture that is a tight crop of one line of text, tilted up to 35 degrees,
// may lie, at least one: the picture as it is, along the letters where some are found, along the
// tilt of its projection profile. Corners lie around the text, turned as it is, with some ground;
// they may reach a little beyond the picture. Score 1, no lines.
// Throws std::invalid_argument if the photo is empty.
std::vector<StampOutline> outlinesOfSingleLine(const Photo& photo);

// A crop of one line as it was read best.
struct SingleLine {
    StampOutline outline;
    EnhancedStamp enhanced;
    models::Reading reading;
};

// Reads the crop the ways that outlinesOfSingleLine gives and keeps the one whose letters can be
// told best; none other is looked for after a sure one. Where it is no more than likely the best is
// tried turned over too, unless `network` has it upright: surely, or the reading is likely.
//   mirrored  the line is a mirror image
//   network   nullptr: reading alone tells
SingleLine readSingleLine(const Photo& photo, TextReader& reader, bool mirrored = false,
                          UprightNetwork* network = nullptr);

}  // namespace vision
