#include "models/mark_search.h"

#include <algorithm>

#include "models/trie_search.h"

namespace models {

namespace {

// Probability of being cut at both ends, and letters read, from which such a text is looked for.
constexpr double cut_at_both = 0.1, cut_when_seen = 0.5;
constexpr std::size_t letters_to_find_cut = 3;

AlignmentPlan turned(const AlignmentPlan& plan)
{
    AlignmentPlan backward;
    backward.entry.assign(plan.exit.rbegin(), plan.exit.rend());
    backward.exit.assign(plan.entry.rbegin(), plan.entry.rend());
    backward.entry.front() *= 1 - plan.cut_right;
    backward.cut_right = plan.cut_left;
    return backward;
}

// Sums by mark.
std::vector<MarkOdds> byMark(std::vector<MarkOdds> odds)
{
    std::sort(odds.begin(), odds.end(),
              [](const MarkOdds& a, const MarkOdds& b) { return a.mark < b.mark; });
    std::size_t kept = 0;
    for (std::size_t i = 0; i < odds.size(); ++i) {
        if (kept > 0 && odds[kept - 1].mark == odds[i].mark)
            odds[kept - 1].odds += odds[i].odds;
        else
            odds[kept++] = odds[i];
    }
    odds.resize(kept);
    return odds;
}

}  // namespace

std::size_t lettersRead(const std::vector<AlignedCell>& cells)
{
    return static_cast<std::size_t>(
        std::count_if(cells.begin(), cells.end(), [](const AlignedCell& cell) {
            const CellWeights& weights = *cell.weights;
            return !weights.unread && weights.space < 0.5 && weights.dot < 0.5;
        }));
}

std::vector<MarkOdds> findMarks(const CompiledRegister& known,
                                const std::vector<AlignedCell>& cells, const AlignmentPlan& plan,
                                const MarkLimits& limits)
{
    const std::size_t letters = lettersRead(cells);
    if (letters == 0)
        return {};
    const SearchLimits search{limits.least * length_share, limits.of_best,
                              limits.to_beat * length_share, limits.worth};
    std::vector<MarkOdds> odds;
    const auto take = [&](const std::vector<FoundText>& found) {
        for (const FoundText& text : found) {
            const CompiledSpelling& spelling = known.spellings[text.text];
            odds.push_back({spelling.mark, spelling.share * text.odds / length_share});
        }
    };
    if (plan.cut_left * plan.cut_right > cut_at_both) {
        take(searchTrie(known.forward, cells, plan, known.rates, search));
        return byMark(std::move(odds));
    }
    AlignmentPlan from_start = plan;
    from_start.entry.front() *= 1 - plan.cut_left;
    from_start.cut_left = 0;
    take(searchTrie(known.forward, cells, from_start, known.rates, search));
    // A text whose beginning is gone is found from its end; where nobody saw that it is gone, a few
    // letters would fit too many.
    if (plan.cut_left > cut_when_seen || (plan.cut_left > 0 && letters > letters_to_find_cut)) {
        std::vector<AlignedCell> backward(cells.rbegin(), cells.rend());
        take(searchTrie(known.backward, backward, turned(plan), known.rates, search,
                        Endings::CutOnly));
    }
    return byMark(std::move(odds));
}

}  // namespace models
