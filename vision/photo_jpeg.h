#pragma once

#include <span>

#include "vision/decoded_picture.h"

namespace vision {

// Decodes a JPEG (grey, YCbCr, RGB, CMYK, YCCK; baseline or progressive) through libjpeg. The size
// is checked in the header, before any pixel is decoded. Never throws on damaged bytes.
// An embedded colour profile is followed; inks without one are turned by plain multiplication.
DecodedPicture decodeJpeg(std::span<const unsigned char> bytes, double max_pixels);

}  // namespace vision
