#pragma once

#include <vector>

#include "vision/finder_cores.h"

namespace vision {

// The cores with what goes on in their row beyond their ends and is too faint to be core by itself:
// letters that are worn, wide gaps. A core that the row runs into is put together with it.
//   cores  of this table
std::vector<LineCore> grownCores(std::vector<LineCore> cores, const FinderTable& table,
                                 const CoreOptions& options = {});

// Cores of which one goes on where another ends (same direction, capital height and row, with a gap
// under 2 capital heights), put together; the others as they were.
std::vector<LineCore> joinedCores(std::vector<LineCore> cores);

}  // namespace vision
