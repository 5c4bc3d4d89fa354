#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "models/cell_weights.h"
#include "models/reading.h"

// A line as single characters, as the date reader walks over it.
namespace models {

// One character's place. A lost stretch gives as many glyphs as it stands for.
struct DateGlyph {
    std::size_t cell = 0;  // in the line
    bool unread = false;
    bool doubtful = false;
    std::vector<int> digits;              // that it can be, as far as it was read; empty for none
    std::array<double, 10> digit_odds{};  // P(seen | digit) / P(seen | other text); 1 when unread
    bool is_digit = false;                // its likeliest letter is a digit
};

// The glyphs of one way to count the line's stretches of uncertain length, and what each cell says
// of letters.
class DateLine {
public:
    explicit DateLine(const Line& line);

    const Line& line() const { return line_; }
    // One sequence for each way to count the uncertain stretches (up to four characters each, a
    // few dozen ways at most).
    std::vector<std::vector<DateGlyph>> waysToCount() const;

    // P(seen | letter) / P(seen | other text) of a glyph; 1 when it is unread.
    double odds(const DateGlyph& glyph, char letter) const;

private:
    DateGlyph glyphOf(std::size_t cell) const;

    const Line& line_;
    LetterIds ids_;
    std::vector<CellWeights> weights_;
    std::array<std::size_t, 128> id_of_char_{};
};

}  // namespace models
