#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "models/reading.h"
#include "models/reading_errors.h"

// What a line's cells say about each letter: the numbers that text matching, dates and letter
// models share.
namespace models {

// Letters by number, so that tables can be vectors.
class LetterIds {
public:
    std::size_t idOf(const std::string& letter);  // a new letter gets the next number
    std::size_t size() const { return letters_.size(); }
    bool contains(const std::string& letter) const { return ids_.count(letter) > 0; }
    const std::string& letter(std::size_t id) const { return letters_[id]; }
    const std::vector<std::string>& letters() const { return letters_; }  // by number

    // The characters of a text, in one form, as numbers.
    std::vector<std::size_t> idsOf(const std::string& text);

private:
    std::vector<std::string> letters_;
    std::unordered_map<std::string, std::size_t> ids_;
};

// One cell's weights. A cell that stands for one character has of_letter; an unread one weighs
// every letter with 1. A stretch stands for `least` to `most` characters (nullopt: any number).
struct CellWeights {
    bool unread = false;
    bool stretch = false;
    int least = 1;
    std::optional<int> most = 1;
    std::vector<double> of_letter;  // P(what is seen | this letter stood here), by letter number
    double other = 1;               // P(what is seen | some text that is no mark), a letter's worth
    double dot = 1, space = 1;      // P(what is seen | a full stop, a space stood here)
};

// The weights of a line's cells for the letters of `ids` (those known when it is called).
// The letter U+FFFD (one that a register could not read either) fits every cell as other text does.
// A restored cell was not read: it weighs as a lost one. A clear letter leaves room for a slip, a
// doubtful one for its look-alikes.
std::vector<CellWeights> weighCells(const std::vector<Cell>& cells, const LetterIds& ids,
                                    const ReadingErrors& errors);

// Share of a letter in text that is no maker's mark: sizes, numbers, dates, short codes. Sums to
// about 1 over the characters that occur there.
double otherTextShare(const std::string& letter);

}  // namespace models
