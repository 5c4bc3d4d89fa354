#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "vision/weights_error.h"

namespace vision {

// The bytes of one of the files that the line reader needs, checked against the folder's SHA256SUMS
// where that lists it.
// Throws WeightsError if the file is missing, empty or damaged.
std::vector<unsigned char> checkedWeights(const std::filesystem::path& folder,
                                          const std::string& name);

// "FILE WHAT; without it lines are read by Tesseract alone, take it anew from the project".
WeightsError unusableWeights(const std::filesystem::path& file, const std::string& what);

}  // namespace vision
