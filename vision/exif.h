#pragma once

#include <span>

#include "vision/photo.h"

namespace vision {

struct ExifFacts {
    int orientation = 1;  // 1 to 8; 1 when absent or out of range
    CaptureFacts capture;
};

// Reads the Exif block of a picture (JEITA CP-3451, Exif 2.2 and later) through libexif.
//   tiff     the block from its TIFF header on ("II*" or "MM*"), without the "Exif\0\0" that a JPEG
//            puts before it; may be empty
//   returns  what could be read; a damaged block gives less, never an error
ExifFacts readExif(std::span<const unsigned char> tiff);

}  // namespace vision
