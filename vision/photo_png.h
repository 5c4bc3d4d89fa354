#pragma once

#include <span>

#include "vision/decoded_picture.h"

namespace vision {

// Decodes a PNG of any depth and colour kind through libpng; what is transparent is laid on white.
// The size is checked in the header, before any pixel is decoded. Never throws on damaged bytes.
DecodedPicture decodePng(std::span<const unsigned char> bytes, double max_pixels);

}  // namespace vision
