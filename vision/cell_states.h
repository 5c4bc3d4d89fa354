#pragma once

#include <cctype>
#include <cstddef>
#include <string>

#include "models/reading.h"

// What every reader makes of a certainty, so that one state means one thing whoever read.
namespace vision {

inline constexpr double clear_from = 0.85;  // a cell at least this sure is clear
inline constexpr double traces_below = 0.15;
inline constexpr std::size_t most_alternatives = 6;

inline models::CellState stateAt(double certainty)
{
    return certainty >= clear_from     ? models::CellState::Clear
           : certainty >= traces_below ? models::CellState::Doubtful
                                       : models::CellState::Traces;
}

// Whether a character is more than a stop, a dash or another small sign that specks look like.
inline bool isLetterOrDigit(const std::string& text)
{
    return !text.empty() && (static_cast<unsigned char>(text[0]) >= 0x80 ||
                             std::isalnum(static_cast<unsigned char>(text[0])) != 0);
}

}  // namespace vision
