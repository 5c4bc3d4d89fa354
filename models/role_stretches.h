#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "models/date_mark.h"
#include "models/reading.h"

namespace models {

// A stretch of words with one meaning: cells first_cell <= i < end_cell.
struct RoleStretch {
    std::size_t first_cell = 0, end_cell = 0;
    std::optional<LineRole> lead;  // the word that leads it says so
    double date = 0;               // probability that it is one, by its form alone
    bool is_number = false;        // led by NO alone: an owner's, a contract's or another's
};

// Parts a line at its dates, the words that lead and the property arrow, from left to right.
std::vector<RoleStretch> roleStretches(const Line& line, const DateContext& context);

}  // namespace models
