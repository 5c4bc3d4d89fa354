#pragma once

#include <filesystem>

namespace bench {

// Writes a register of so many made-up makers, three marks each; initials are few, so that many
// marks are alike, as in a real trade.
void writeMadeRegister(const std::filesystem::path& folder, int makers);

}  // namespace bench
