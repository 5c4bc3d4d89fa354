#pragma once

#include <span>
#include <string>

#include "vision/photo.h"

namespace vision {

struct ExifFacts {
    int orientation = 1;  // 1 to 8; 1 when absent or out of range
    CaptureFacts capture;
};

// Reads the Exif block of a picture (JEITA CP-3451, Exif 2.2 and later) through libexif.
//   tiff     the block from its TIFF header on ("II*" or "MM*"); the "Exif\0\0" that a JPEG puts
//            before it may stand there; may be empty
//   returns  what could be read; a damaged block gives less, never an error
ExifFacts readExif(std::span<const unsigned char> tiff);

// "1998:05:01 12:30:00" as "1998-05-01T12:30:00"; anything else, such as blanks, as nothing.
std::string isoTime(const std::string& exif_time);

// Maker and model in one; a maker repeated in front of the model, as many cameras do, is said once.
std::string cameraName(const std::string& maker, const std::string& model);

// Printable ASCII without surrounding blanks: Exif text is ASCII, and what is not is damage.
std::string plainText(const std::string& exif_text);

}  // namespace vision
