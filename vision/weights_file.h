#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "vision/weights_error.h"

namespace vision {

// What becomes of the work without a file that the line reader needs.
inline constexpr const char* without_line_reader = "lines are read by Tesseract alone";

// The bytes of one of the files that go with the networks, checked against the folder's SHA256SUMS.
// Throws WeightsError if the file is missing, empty, damaged or not listed there.
std::vector<unsigned char> checkedWeights(const std::filesystem::path& folder,
                                          const std::string& name,
                                          const std::string& without = without_line_reader);

// "FILE WHAT; without it WITHOUT, take it anew from the project".
WeightsError unusableWeights(const std::filesystem::path& file, const std::string& what,
                             const std::string& without = without_line_reader);

}  // namespace vision
