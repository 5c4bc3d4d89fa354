#pragma once

#include <opencv2/core.hpp>

#include "vision/line_crop.h"

namespace vision {

inline constexpr int network_crop_px = 48;  // height of the crops that the line networks take

// The line as the networks saw lines in training: capitals to five eighths of the crop's height.
//   layer  CV_8UC1; not changed
// Throws as cropLine does.
LineCrop networkCrop(const cv::Mat& layer, const LineRow& row);

// What is put into a network: the crop levelled to mean 0 and deviation 1, with bare ground behind
// the last letter, its width rounded up so that few sizes occur.
//   crop     CV_8UC1, network_crop_px high, of any width and polarity; not changed
//   returns  CV_32FC1
// Throws std::invalid_argument if the crop does not fit.
cv::Mat networkInput(const cv::Mat& crop);

// How many columns of that input the crop reaches into, the bare ground included.
int networkInputReach(const cv::Mat& crop);

// Ground that a crop shows beyond either end of its row, pixels of the crop.
double networkRim();

}  // namespace vision
