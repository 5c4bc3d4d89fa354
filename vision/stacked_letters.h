#pragma once

#include <optional>

#include "vision/locate.h"

namespace vision {

// Two letters set above two, as coded marks in a frame are, may be found as one short line along
// their height. The same mark as two lines across, to be read either way up.
//   returns  nothing where the outline is not of one short straight line
std::optional<StampOutline> asLinesAcross(const StampOutline& outline);

}  // namespace vision
