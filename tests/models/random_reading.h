#pragma once

#include <random>
#include <vector>

#include "models/reading.h"

// Readings of every kind that reading.h allows, for tests of what is written and read back.
std::vector<models::Line> randomLines(std::mt19937& random);
