#include "models/mark_search.h"

#include <algorithm>

#include "models/trie_search.h"

namespace models {

namespace {

// Probability of being cut at both ends, and letters read, from which such a text is looked for.
constexpr double cut_at_both = 0.1, cut_when_seen = 0.5;
constexpr std::size_t letters_to_find_cut = 3;
// Texts whose end is gone though nobody saw it must come to so much more to be looked for.
constexpr double limits_when_unseen = 30;

// For the line from its end, its text whole there; its beginning may be cut where that is looked
// for.
AlignmentPlan fromEnd(const AlignmentPlan& plan, bool beginning_may_be_cut)
{
    AlignmentPlan backward;
    backward.entry.assign(plan.exit.rbegin(), plan.exit.rend());
    backward.exit.assign(plan.entry.rbegin(), plan.entry.rend());
    backward.entry.front() *= 1 - plan.cut_right;
    if (beginning_may_be_cut)
        backward.cut_right = plan.cut_left;
    else
        backward.exit.back() *= 1 - plan.cut_left;
    return backward;
}

// For a text whose beginning is whole.
AlignmentPlan fromStart(AlignmentPlan plan)
{
    plan.entry.front() *= 1 - plan.cut_left;
    plan.cut_left = 0;
    return plan;
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
    SearchLimits search{limits.least * length_share, limits.of_best, limits.to_beat * length_share,
                        limits.worth};
    std::vector<MarkOdds> odds;
    const auto take = [&](const std::vector<FoundText>& found) {
        for (const FoundText& text : found) {
            const CompiledSpelling& spelling = known.spellings[text.text];
            odds.push_back({spelling.mark, spelling.share * text.odds / length_share});
            search.best_before =
                std::max(search.best_before, text.odds * search.worthOf(text.text));
        }
    };
    if (plan.cut_left * plan.cut_right > cut_at_both) {
        take(searchTrie(known.forward, cells, plan, known.rates, search));
        return byMark(std::move(odds));
    }
    // Where nobody saw that an end is gone, a few letters would fit too many texts.
    const auto mayBeCut = [&](double cut) {
        return cut > cut_when_seen || (cut > 0 && letters > letters_to_find_cut);
    };
    // From the end, since many texts end alike and begin as they like: ten times fewer branches
    // come into question.
    const std::vector<AlignedCell> backward(cells.rbegin(), cells.rend());
    take(searchTrie(known.backward, backward, fromEnd(plan, mayBeCut(plan.cut_left)), known.rates,
                    search));
    if (mayBeCut(plan.cut_right)) {
        const double more = plan.cut_right > cut_when_seen ? 1 : limits_when_unseen;
        search.least *= more;
        search.share *= more;
        take(searchTrie(known.forward, cells, fromStart(plan), known.rates, search,
                        Endings::CutOnly));
    }
    return byMark(std::move(odds));
}

}  // namespace models
