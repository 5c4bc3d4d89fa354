#pragma once

#include <vector>

#include <opencv2/core.hpp>

namespace vision {

enum class PictureFault {
    None,
    TooLarge,     // more pixels than allowed; nothing was decoded
    Torn,         // the file ends before the picture does
    Damaged,      // bytes in the file are not what they should be
    Unsupported,  // a whole picture of a rare kind that the library cannot decode
};

// A picture as its file holds it: not turned by EXIF.
struct DecodedPicture {
    PictureFault fault = PictureFault::None;
    cv::Size size_px;  // from the header; 0 x 0 when even that could not be read
    cv::Mat pixels;    // CV_8UC3 (BGR), empty if nothing could be decoded
    double whole = 0;  // 0 to 1, share of the picture that came before the fault; 1 without one
    std::vector<unsigned char> exif;  // from the TIFF header on; empty when there is none
};

}  // namespace vision
