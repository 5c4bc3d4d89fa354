#include "models/letter_matches.h"

#include <algorithm>

namespace models {

namespace {

constexpr double hardly_likelier = 2;  // than the unlikeliest: not worth telling apart

}  // namespace

LetterMatches::LetterMatches(const TextTrie& trie, const std::vector<AlignedCell>& cells,
                             const AlignmentPlaces& places, const GapRates& rates)
    : places_(places.size()),
      most_stays_(places_, 0),
      most_steps_(places_, 0),
      likely_(places_),
      unlikely_(places_, 0)
{
    const std::size_t letters = trie.letters().empty() ? 0 : trie.letters().back() + 1;
    stays_.assign(letters * places_, 0);
    steps_.assign(letters * places_, 0);
    for (const std::uint32_t letter : trie.letters())
        weigh(letter, trie.skip(letter), cells, places, rates);
    for (std::size_t p = 0; p < places_; ++p)
        rankLetters(trie, p);
}

void LetterMatches::weigh(std::uint32_t letter, double skip, const std::vector<AlignedCell>& cells,
                          const AlignmentPlaces& places, const GapRates& rates)
{
    double* stays = &stays_[letter * places_];
    double* steps = &steps_[letter * places_];
    for (std::size_t p = 0; p < places_; ++p) {
        if (places[p].stay == AlignmentPlaces::Stay::Skipped)
            stays[p] = rates.none * skip;
        else if (places[p].stay == AlignmentPlaces::Stay::Taken)
            stays[p] = going_on;
        if (places[p].step == AlignmentPlaces::Step::Free) {
            steps[p] = 1;
        } else if (places[p].step == AlignmentPlaces::Step::Match) {
            const AlignedCell& cell = cells[places[p].cell];
            const double seen =
                cell.weights->unread ? 1 : cell.weights->of_letter[letter] / cell.divisor;
            steps[p] = rates.none * (1 - skip) * seen;
        }
    }
}

void LetterMatches::rankLetters(const TextTrie& trie, std::size_t place)
{
    std::vector<LikelyLetter>& likely = likely_[place];
    for (const std::uint32_t letter : trie.letters()) {
        const double step = steps(letter)[place];
        most_stays_[place] = std::max(most_stays_[place], stays(letter)[place]);
        most_steps_[place] = std::max(most_steps_[place], step);
        if (step > 0)
            likely.push_back({TextTrie::bitOf(letter), step / (1 - trie.skip(letter))});
    }
    if (likely.empty())
        return;
    std::sort(likely.begin(), likely.end(),
              [](const auto& a, const auto& b) { return a.weight > b.weight; });
    unlikely_[place] = std::min(hardly_likelier * likely.back().weight, likely.front().weight);
    while (!likely.empty() && likely.back().weight <= unlikely_[place])
        likely.pop_back();
}

double LetterMatches::likeliestStep(std::size_t place, std::uint64_t letters) const
{
    for (const LikelyLetter& letter : likely_[place])
        if ((letters & letter.bit) != 0)
            return letter.weight;
    return unlikely_[place];
}

}  // namespace models
