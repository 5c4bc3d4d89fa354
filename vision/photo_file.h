#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "vision/photo_kind.h"

namespace vision {

// A file's bytes, of a kind that is a picture.
struct PictureFile {
    std::vector<unsigned char> bytes;
    FileKindFound found;
};

// Reads the whole file, once its first bytes say that it is worth reading. No file stays open.
// Throws ImageError, with the file and the remedy, for one that is not there, a folder, not to be
// opened or read, empty, of another kind, or larger than a picture of `max_pixels` can be.
PictureFile readPictureFile(const std::filesystem::path& file, double max_pixels);

// A sentence that names the file: its trouble and the remedy stand behind its name.
std::string sentenceAbout(const std::filesystem::path& file, const std::string& trouble_and_remedy);

// Throws ImageError with that sentence.
[[noreturn]] void refuse(const std::filesystem::path& file, const std::string& trouble_and_remedy);

// "250 megapixels", in three digits.
std::string megapixels(double pixels);

}  // namespace vision
