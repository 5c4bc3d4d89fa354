#pragma once

#include <cstdint>

#include "tests/support/synthetic/surface.h"

namespace synthetic {

enum class WeaveKind {
    Plain,   // canvas: over one, under one
    Twill,   // over two, under one, stepping aside: diagonal ribs
    Webbing  // dense threads along x over hidden cross threads: ribs
};

struct WeaveOptions {
    WeaveKind kind = WeaveKind::Plain;
    cv::Vec3b colour_bgr{70, 105, 110};
    double thread_px = 5;     // from thread to thread
    double unevenness = 0.5;  // 0 to 1, of threads' width, colour and course
    std::uint32_t seed = 1;
};

// Weaves a piece thread by thread; the length of webbing runs along x.
// Throws std::invalid_argument for a thread below 2 pixels or an unevenness outside 0 to 1.
Surface weave(cv::Size size, const WeaveOptions& options);

}  // namespace synthetic
