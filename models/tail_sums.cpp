#include "models/tail_sums.h"

#include <algorithm>
#include <cmath>

namespace models {

TailSums::TailSums(const TextTrie::Tail& tail, const LetterMatches& matches,
                   const std::vector<AlignedCell>& cells, const AlignmentPlan& plan,
                   const GapRates& rates)
    : width_(cells.size() + 1),
      sums_(tail.endings.size() * width_),
      most_(width_, 0),
      cuts_(tail.endings.size())
{
    for (std::size_t ending = 0; ending < tail.endings.size(); ++ending) {
        weigh(ending, tail.endings[ending], matches, cells, plan, rates);
        for (std::size_t i = 0; i < width_; ++i)
            most_[i] = std::max(most_[i], of(ending)[i]);
        most_cut_ = std::max(most_cut_, cuts_[ending]);
    }
}

// Backward from the ending's last letter to its first; the step onto the first is told apart, since
// the row before it is given.
void TailSums::weigh(std::size_t ending, const MatchText& text, const LetterMatches& matches,
                     const std::vector<AlignedCell>& cells, const AlignmentPlan& plan,
                     const GapRates& rates)
{
    const std::size_t last = cells.size(), length = text.letters.size();
    const double cut = plan.exit[last] * rates.none * plan.cut_right * (1 - going_on);
    std::vector<double> behind(width_), here(width_);
    for (std::size_t i = width_; i-- > 0;) {
        behind[i] = plan.exit[i] * rates.none * (i == last ? 1 - plan.cut_right : 1);
        if (i < last)
            behind[i] += cells[i].stray * behind[i + 1];
    }
    for (std::size_t j = length; j-- > 0;) {
        const double* match = matches.ofLetter(static_cast<std::uint32_t>(text.letters[j]));
        const double skip = rates.none * text.skip[j], stays = 1 - text.skip[j];
        const double beyond = cut * std::pow(going_on, static_cast<double>(length - j) - 1);
        for (std::size_t i = width_; i-- > 0;) {
            here[i] = skip * behind[i] + (i == last ? beyond : stays * match[i] * behind[i + 1]);
            if (j > 0 && i < last)
                here[i] += cells[i].stray * here[i + 1];
        }
        std::swap(here, behind);
    }
    std::copy(behind.begin(), behind.end(), sums_.begin() + static_cast<long>(ending * width_));
    cuts_[ending] = cut * std::pow(going_on, static_cast<double>(length));
}

}  // namespace models
