#pragma once

#include <vector>

#include "models/reading.h"

namespace models {

// Joins what several readers saw on one stamp into one proposal. Lines are paired by their boxes
// (or by order and text where boxes are unknown), their cells by an alignment that weighs text and
// extents; the alternatives of paired cells are pooled, agreement raises a certainty and
// disagreement keeps both letters as alternatives. A cell that only one reader saw stays, less
// certain. A cell that a person confirmed (basis object in hand or transcript, or `by` not an
// engine's) is kept as the person left it, and nothing is put into a line that a person has read.
//   readings  in order of trust, most trusted last; may be empty
//   returns   a reading whose reader is the readers' names joined by " + "; empty for no readings.
//             One reading comes back as it is. Joined lines have no certainty of their own.
Reading mergeReadings(const std::vector<Reading>& readings);

}  // namespace models
