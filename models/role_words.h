#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "models/reading.h"

// The words of a line, and what they say of its role.
namespace models {

// A stretch of cells between spaces (or behind a leading word and its dot: NO.1940), as its
// likeliest letters, in capitals.
struct RoleWord {
    std::string text;
    std::size_t first_cell = 0, end_cell = 0;
};

std::vector<RoleWord> roleWordsOf(const Line& line);

// The role of what a word leads: SIZE, PATT, CONTRACT, INSP, NAME ...; nullopt for other words.
// Dots and a colon behind the word do not count. Common practice, no source.
std::optional<LineRole> leadOf(const std::string& word);

// Does the word stand before a number of whatever it is: NO, SERIAL? Its own role is Other.
bool leadsNumber(const std::string& word);

// All words that lead, in capitals.
std::vector<std::string> leadWords();

// What a text is made of. Unread characters count as neither.
struct TextForm {
    std::size_t letters = 0, digits = 0;
    std::size_t firm_words = 0;  // LTD, CO, BROS, SONS, WORKS ...
    bool ampersand = false;
};

TextForm formOf(const std::string& text);

}  // namespace models
