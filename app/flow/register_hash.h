#pragma once

#include <filesystem>
#include <string>

namespace flow {

// SHA-256 over the register's CSV files, their names and bytes in the order of their names: an
// attribution keeps it, so that it can be told later what was known. Throws models::RegisterError
// if a file cannot be read.
std::string registerSha256(const std::filesystem::path& register_folder);

}  // namespace flow
