#pragma once

#include <vector>

#include "vision/found_line.h"
#include "vision/locate.h"

namespace vision {

// Puts lines that run the same way, with letters of like height, one below another and near, into
// one stamp, where the ground runs on between them: two pieces that lie edge to edge are two
// stamps. A stamp's lines stand in reading order, as read with its up nearest the photo's up, and
// all run its way.
//   grey     CV_8UC1, the picture that the lines' pixels count in
//   returns  one outline a group, likeliest first; its score is that of its best line
std::vector<StampOutline> groupLines(const std::vector<FoundLine>& lines, const cv::Mat& grey);

// The same of the likeliest lines only, as many and as likely as the options ask for, and the
// likeliest of the stamps.
//   lines  likeliest first
// Throws std::invalid_argument if an option is out of range.
std::vector<StampOutline> stampsOf(const std::vector<FoundLine>& lines, const cv::Mat& grey,
                                   const LocateOptions& options);

}  // namespace vision
