#pragma once

#include <span>

#include "vision/decoded_picture.h"

namespace vision {

// Decodes an uncompressed BMP (1, 4, 8, 16, 24 or 32 bits, palette or masks, either way up; with
// the profile that the header's fifth version may carry). Run-length packed ones are Unsupported.
// The size is checked in the header, before any pixel is decoded. Never throws on damaged bytes.
DecodedPicture decodeBmp(std::span<const unsigned char> bytes, double max_pixels);

}  // namespace vision
