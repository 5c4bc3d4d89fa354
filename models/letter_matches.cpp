#include "models/letter_matches.h"

#include <algorithm>

namespace models {

namespace {

constexpr double hardly_likelier = 2;  // than the unlikeliest: not worth telling apart

}  // namespace

LetterMatches::LetterMatches(const TextTrie& trie, const std::vector<AlignedCell>& cells,
                             const GapRates& rates)
    : cells_(cells.size()),
      most_(cells.size(), 0),
      likely_(cells.size()),
      unlikely_(cells.size(), 1)
{
    const std::size_t letters = trie.letters().empty() ? 0 : trie.letters().back() + 1;
    weights_.assign(letters * cells_, rates.none);
    for (std::size_t i = 0; i < cells_; ++i) {
        if (cells[i].weights->stretch)
            continue;
        if (!cells[i].weights->unread)
            for (const std::uint32_t letter : trie.letters())
                weights_[letter * cells_ + i] =
                    rates.none * cells[i].weights->of_letter[letter] / cells[i].divisor;
        rankLetters(trie, i);
    }
}

void LetterMatches::rankLetters(const TextTrie& trie, std::size_t cell)
{
    std::vector<LikelyLetter>& likely = likely_[cell];
    for (const std::uint32_t letter : trie.letters())
        likely.push_back({TextTrie::bitOf(letter), weights_[letter * cells_ + cell]});
    if (likely.empty())
        return;
    std::sort(likely.begin(), likely.end(),
              [](const auto& a, const auto& b) { return a.weight > b.weight; });
    most_[cell] = likely.front().weight;
    unlikely_[cell] = std::min(hardly_likelier * likely.back().weight, most_[cell]);
    while (!likely.empty() && likely.back().weight <= unlikely_[cell])
        likely.pop_back();
}

double LetterMatches::likeliest(std::size_t cell, std::uint64_t letters) const
{
    for (const LikelyLetter& letter : likely_[cell])
        if ((letters & letter.bit) != 0)
            return letter.weight;
    return unlikely_[cell];
}

}  // namespace models
