#pragma once

#include "models/reading.h"
#include "vision/enhance.h"
#include "vision/text_reader.h"
#include "vision/upright_network.h"

namespace vision {

// A stamp the right way up, with what was read on it that way.
struct UprightStamp {
    EnhancedStamp enhanced;
    models::Reading reading;
};

enum class TextLayout { Lines, SingleLine };

// Reads the stamp as it is and turned over, and keeps the way in which more was read with more
// certainty; after a sure reading the other way is not tried.
//   network  tells which way to try first; where it is sure no other is tried, where the ways read
//            nearly alike its word decides. nullptr: the stamp is first read as it is, and stays so
//            on equal terms
UprightStamp readRightWayUp(const RectifiedStamp& stamp, TextReader& reader,
                            TextLayout layout = TextLayout::Lines,
                            UprightNetwork* network = nullptr);

// Log odds that the stamp's lines, taken together, stand upright as they lie; 0 where there are
// none. A stamp without located lines is looked through for rows, or is one line as a whole.
double uprightLogOdds(const EnhancedStamp& stamp, UprightNetwork& network,
                      TextLayout layout = TextLayout::Lines);

// Log odds from which on the network's word is taken without reading the other way too.
inline constexpr double surely_upright = 4;

}  // namespace vision
