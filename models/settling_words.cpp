#include "models/settling_words.h"

#include <cmath>

namespace models {

namespace {

std::string ordinal(std::size_t number)
{
    const std::size_t tens = number % 100;
    std::string ending = "th";
    if (tens < 11 || tens > 13)
        ending = number % 10 == 1 ? "st" : number % 10 == 2 ? "nd" : number % 10 == 3 ? "rd" : "th";
    return std::to_string(number) + ending;
}

std::string inPercent(double probability)
{
    return " (" + std::to_string(std::lround(100 * probability)) + " %)";
}

std::string meaningInWords(const LetterMeaning& meaning)
{
    const std::string letter = meaning.letter == " " ? "a space" : meaning.letter;
    return letter + inPercent(meaning.probability) + " would speak for " +
           (meaning.maker_id.empty() ? "a maker that is not in the register" : meaning.maker) +
           inPercent(meaning.maker_probability);
}

}  // namespace

SettlingWords settlingInWords(const SettlingCell& cell)
{
    SettlingWords words;
    words.where = "look again at the " + ordinal(cell.cell + 1) + " character of " + cell.typed +
                  " first: it would tell most of the maker";
    for (const LetterMeaning& meaning : cell.letters)
        words.meanings.push_back(meaningInWords(meaning));
    return words;
}

}  // namespace models
