#pragma once

#include <span>

#include "vision/decoded_picture.h"

namespace vision {

// Decodes a still WebP (lossy or lossless) through libwebp; what is transparent is laid on white.
// The size is checked in the header, before any pixel is decoded. Never throws on damaged bytes.
DecodedPicture decodeWebP(std::span<const unsigned char> bytes, double max_pixels);

}  // namespace vision
