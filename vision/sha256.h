#pragma once

#include <span>
#include <string>

namespace vision {

// SHA-256 (FIPS 180-4) of the bytes: 64 hexadecimal digits, lower case. No bytes have a hash too.
std::string sha256Hex(std::span<const unsigned char> bytes);

}  // namespace vision
