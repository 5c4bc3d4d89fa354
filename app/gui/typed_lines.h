#pragma once

#include <string>
#include <vector>

#include "models/reading.h"

namespace gui {

// Lines as a person has written them, as text, in the place of `before`: what the text leaves as
// it was keeps its reader, its alternatives and its place in the picture; everything else is the
// person's, placed between its neighbours.
std::vector<models::Line> withPlacesOf(const std::vector<models::Line>& before,
                                       const std::vector<models::Line>& typed,
                                       const std::string& person);

}  // namespace gui
