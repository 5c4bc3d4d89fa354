#pragma once

#include "models/reading.h"
#include "vision/enhance.h"
#include "vision/text_reader.h"

namespace vision {

// A stamp the right way up, with what was read on it that way.
struct UprightStamp {
    EnhancedStamp enhanced;
    models::Reading reading;
};

enum class TextLayout { Lines, SingleLine };

// Reads the stamp as it is and turned over, and keeps the way in which more was read with more
// certainty. On equal terms the stamp stays as it is.
UprightStamp readRightWayUp(const RectifiedStamp& stamp, TextReader& reader,
                            TextLayout layout = TextLayout::Lines);

}  // namespace vision
