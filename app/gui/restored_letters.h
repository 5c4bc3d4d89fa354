#pragma once

#include <optional>
#include <string>
#include <vector>

#include "models/reading.h"

namespace gui {

// The lines with the lost and faint cells of one of them filled by the letters that a mark has in
// their place, each as restored (gone, but known from elsewhere) and vouched for by the person. No
// letter that was read is changed. The line is the one that the mark explains best.
//   mark     in the typed notation
//   returns  nothing when no line has a lost or faint cell that the mark would fill
std::optional<std::vector<models::Line>> linesRestoredFrom(const std::string& mark,
                                                           const std::vector<models::Line>& lines,
                                                           const std::string& person);

}  // namespace gui
