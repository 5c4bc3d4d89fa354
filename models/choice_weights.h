#pragma once

#include <string>
#include <vector>

#include "models/reading.h"

namespace models {

// Certainties for letters of which somebody said only the order, best first: a single letter gets
// 0.6; several share 0.9, each 0.6 of the one before it. Common practice, no source: they are what
// the typed notation and TEI mean where they give no number.
std::vector<Alternative> weighedChoice(const std::vector<std::string>& letters);

}  // namespace models
