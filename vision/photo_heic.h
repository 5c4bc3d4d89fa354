#pragma once

#include <span>

#include "vision/decoded_picture.h"

namespace vision {

// Whether this build has libheif, and so can decode HEIC at all.
bool canDecodeHeic();

// Decodes the primary picture of a HEIC file through libheif, turned and mirrored as the file's
// own properties say (ISO/IEC 23008-12, irot and imir): the facts it returns never ask for another
// turn. What is transparent is laid on white. The size is checked in the header, before any pixel
// is decoded. Never throws on damaged bytes; a damaged picture has no pixels.
// Unsupported where canDecodeHeic() is false.
DecodedPicture decodeHeic(std::span<const unsigned char> bytes, double max_pixels);

}  // namespace vision
