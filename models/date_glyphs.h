#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
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

// Where letters were struck over erased ones, two texts stand in one place.
enum class TextLayer { Later, Earlier };

// Is every character of this text one that a date may hold?
bool isDateText(std::string_view text);

// The glyphs of one way to count the line's stretches of uncertain length, and what each cell says
// of letters.
class DateLine {
public:
    explicit DateLine(const Line& line);

    bool isStruckOver() const { return !hidden_.empty(); }
    // One sequence for each way to count the uncertain stretches (up to four characters each, a
    // few dozen ways at most).
    std::vector<std::vector<DateGlyph>> waysToCount(TextLayer layer = TextLayer::Later) const;

    // P(seen | letter) / P(seen | other text) of a glyph; 1 when it is unread. The letter is one
    // that a date may hold.
    double odds(const DateGlyph& glyph, char letter) const;

    // The same of a text that begins at a glyph; 0 when the glyphs end before it does.
    double odds(const std::vector<DateGlyph>& glyphs, std::size_t at, std::string_view text) const;

    // Was it read as a letter of the alphabet?
    bool isLetter(const DateGlyph& glyph) const;

    // May the glyph be this letter, as far as it was read?
    bool canBe(const DateGlyph& glyph, char letter) const;

private:
    DateGlyph glyphOf(std::size_t cell) const;
    bool isHidden(std::size_t cell, TextLayer layer) const;

    const Line& line_;
    LetterIds ids_;
    std::vector<CellWeights> weights_;
    std::vector<std::optional<TextLayer>> hidden_;  // the layer that a cell is not of; or empty
    std::array<std::size_t, 128> id_of_char_{};
};

// The odds of the likeliest digits at a place; 1 for no digits, 0 when a glyph is none.
double bestDigitOdds(const std::vector<DateGlyph>& glyphs, std::size_t at, std::size_t count);

}  // namespace models
