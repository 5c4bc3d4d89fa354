#pragma once

#include <string>

#include "vision/locate.h"

namespace cli {

// Four corners written x,y,x,y,x,y,x,y. Throws UsageError if that is not what is written, or they
// do not make a convex outline of some size, clockwise.
vision::Quad outlineFrom(const std::string& text);

}  // namespace cli
