#pragma once

#include "models/reading.h"

// Where lines stand in the rectified image, for telling which of two readings' lines are one.
namespace models {

bool hasBox(const Line& line);

// Share of the lower box's height that both cover, 0 to 1; none when they stand side by side.
double boxOverlap(const Box& a, const Box& b);

}  // namespace models
