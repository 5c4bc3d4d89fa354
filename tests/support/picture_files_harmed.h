#pragma once

#include <random>

#include "tests/support/picture_files.h"

namespace picture_files {

struct NamedFile {
    std::string name;
    Bytes bytes;
};

// Small sound files of every format that the project reads, in several kinds each, with Exif and
// colour profiles; HEIC where there is an encoder. The same at each call.
std::vector<NamedFile> soundFiles();

// The file with up to five bytes changed, half of them near its beginning, and every third cut off.
Bytes harmed(Bytes bytes, std::mt19937& random);

}  // namespace picture_files
