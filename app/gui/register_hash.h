#pragma once

#include <filesystem>
#include <string>

namespace gui {

// SHA-256 over the register's CSV files, their names and bytes in the order of the names: an
// attribution says by it which register it was concluded with. Empty when the folder is not there.
std::string registerHash(const std::filesystem::path& folder);

}  // namespace gui
