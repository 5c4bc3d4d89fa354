#pragma once

#include <span>

namespace vision {

// The most pixels that a HEIC file's pictures put together from others (ISO/IEC 23008-12, derived
// items "grid" and "iovl") are said to have in their own data. libheif 1.15 tells the size that
// stands beside the picture instead, and makes room for this one: a few bytes can ask for
// gigabytes.
//   returns  0 when there is none, or when the file is too damaged to tell
double mostDerivedPixels(std::span<const unsigned char> bytes);

}  // namespace vision
