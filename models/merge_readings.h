#pragma once

#include <vector>

#include "models/reading.h"

namespace models {

// Joins what several readers saw on one stamp into one proposal. Lines are paired by their boxes
// (or by order where boxes are unknown), their cells by an alignment that weighs text and extents;
// the alternatives of paired cells are pooled, agreement raises a certainty and disagreement keeps
// both letters as alternatives. A cell that a person confirmed (basis or `by` not an engine's) is
// kept as the person left it.
//   readings  in order of trust, most trusted last; may be empty
//   returns   a reading whose reader is the readers' names joined by " + "; empty for no readings
Reading mergeReadings(const std::vector<Reading>& readings);

}  // namespace models
