#pragma once

#include <cstddef>

#include "models/mark_search.h"

// Shares of what the lines of a stamp hold. Common practice, no source.
namespace models {

// Of lines without a mark.
inline constexpr double line_is_date = 0.35, line_is_known_text = 0.15, line_is_wordy = 0.03;
inline constexpr double known_text_is_place = 0.4;  // of the register, beside sizes and other words
inline constexpr double mark_line_has_date = 0.2;
// That a date fills its line, stands at an end of it or within, in parts of other text of the same
// length.
inline constexpr double date_alone = 0.5 / length_share, date_at_an_end = 0.2, date_within = 0.05;

inline double placeShare(std::size_t first_cell, std::size_t end_cell, std::size_t cells)
{
    const bool at_start = first_cell == 0, at_end = end_cell == cells;
    if (at_start && at_end)
        return date_alone;
    return at_start || at_end ? date_at_an_end : date_within;
}

}  // namespace models
