#pragma once

#include <vector>

#include "vision/letter_chains.h"
#include "vision/locate.h"

namespace vision {

// Puts lines that run the same way, with letters of like height, one below another and near, into
// one stamp. A stamp's lines stand in reading order, as read with its up nearest the photo's up.
//   returns  one outline a group, likeliest first; its score is that of its best line
std::vector<StampOutline> groupLines(const std::vector<LetterChain>& lines);

}  // namespace vision
