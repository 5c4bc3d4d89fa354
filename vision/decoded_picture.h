#pragma once

#include <optional>
#include <vector>

#include <opencv2/core.hpp>

#include "vision/exif.h"

namespace vision {

enum class PictureFault {
    None,
    TooLarge,     // more pixels than allowed; nothing was decoded
    Torn,         // the file ends before the picture does
    Damaged,      // bytes in the file are not what they should be
    Unsupported,  // a whole picture of a rare kind that the library cannot decode
    CameraRaw,    // a sensor's own data, which only looks like a TIFF
    Moving,       // more than one picture, shown one after the other
};

// A picture as its file holds it: not turned by EXIF.
struct DecodedPicture {
    PictureFault fault = PictureFault::None;
    cv::Size size_px;  // from the header; 0 x 0 when even that could not be read
    cv::Mat pixels;    // CV_8UC3 (BGR, sRGB), empty if nothing could be decoded
    // 0 to 1, share of the picture that came before the fault; 1 without one, empty when the format
    // cannot tell.
    std::optional<double> whole = 0;
    std::vector<unsigned char> exif;  // from the TIFF header on; empty when there is none
    std::optional<ExifFacts> facts;   // where the format tells them without an Exif block
    bool more_pictures = false;       // others follow in the file
    bool profile_left_out = false;    // it has a colour profile that could not be followed
};

inline bool isOverLimit(cv::Size size_px, double max_pixels)
{
    return static_cast<double>(size_px.width) * size_px.height > max_pixels;
}

}  // namespace vision
