#pragma once

#include <span>

#include "vision/decoded_picture.h"

namespace vision {

// Decodes the first picture of a TIFF (bilevel, grey, palette, RGB, YCbCr, CMYK, Lab; up to 16
// bits; strips or tiles; what libtiff can unpack); what is transparent is laid on white. The size
// is checked in the directory, before any pixel is decoded. Its facts stand in TIFF tags and are
// returned as `facts`. Never throws on damaged bytes.
DecodedPicture decodeTiff(std::span<const unsigned char> bytes, double max_pixels);

}  // namespace vision
