#pragma once

#include <string>
#include <vector>

#include "models/reading.h"

// Looking for words in texts either of which may be partly unread. Case and diacritics do not
// matter.
namespace models {

// One place of a text: the letters that may stand there, or any letter.
struct SearchPlace {
    std::vector<char32_t> letters;  // folded; empty: unread, any letter
    bool optional = false;          // may be missing
    bool repeated = false;          // any number of letters, with `optional` also none
};

using SearchText = std::vector<SearchPlace>;

// A filed line of a reading: lost and faint cells are any letter, a gap of unknown extent or an end
// that was cut off any number of them.
SearchText searchText(const Line& line);

// Other text as it stands.
SearchText searchText(const std::string& text);

// The words of a query, split at spaces; each may be in the typed notation.
// Throws std::invalid_argument, with the position, if it is not in the notation.
std::vector<SearchText> searchWords(const std::string& query);

// Whether a text holds a word. A word of letters only may stand anywhere in the text (HALL finds
// HALLER); one with unread places stands for a whole word ([- - -]ER finds HALLER but not ERNEST).
// At least half of the word's letters must agree with letters that were read, so that a line that
// is all lost does not answer every question.
bool holdsWord(const SearchText& text, const SearchText& word);

}  // namespace models
