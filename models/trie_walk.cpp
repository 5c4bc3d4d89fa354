#include "models/trie_walk.h"

#include <algorithm>

namespace models {

TrieWalk::TrieWalk(const TextTrie& trie, const std::vector<AlignedCell>& cells,
                   const AlignmentPlan& plan, const GapRates& rates, const SearchLimits& limits,
                   Endings endings)
    : trie_(trie),
      limits_(limits),
      places_(cells, plan, rates, endings, trie.depth()),
      none_(rates.none),
      any_skipped_(1 / (1 - rates.none)),
      matches_(trie, cells, places_, rates),
      most_(places_, matches_, trie.depth()),
      tails_(trie, places_, matches_),
      rows_((trie.depth() + 1) * places_.size(), 0),
      bands_(trie.depth() + 1, {0, places_.size() - 1}),
      children_(trie.depth() + 1),
      ahead_(places_.size(), 0),
      letters_to_come_((trie.depth() + 1) * (places_.size() + 1), 0),
      letters_from_(trie.depth() + 2, 0),
      best_(limits.best_before)
{
    for (std::size_t p = 0; p < places_.size(); ++p) {
        is_skipped_.push_back(places_[p].stay == AlignmentPlaces::Stay::Skipped ? 1 : 0);
        is_taken_.push_back(places_[p].stay == AlignmentPlaces::Stay::Taken ? 1 : 0);
    }
}

void TrieWalk::beginRoot()
{
    std::copy(places_.begin().begin(), places_.begin().end(), rowAt(0));
    places_.goOnward(rowAt(0));
}

// Only where it can matter: from the first place at which the row above does, to where nothing but
// stray cells would follow.
void TrieWalk::fillRow(const TextTrie::Node& node, std::size_t depth)
{
    const Band from = bands_[depth - 1];
    const double *stays = matches_.stays(node.letter), *steps = matches_.steps(node.letter);
    const double* above = rowAt(depth - 1);
    double* here = rowAt(depth);
    here[from.first] = above[from.first] * stays[from.first];
    for (std::size_t p = from.first; p < from.last; ++p)
        here[p + 1] = above[p] * steps[p] + above[p + 1] * stays[p + 1];
    std::size_t filled = from.last;
    if (filled + 1 < places_.size()) {
        here[filled + 1] = above[filled] * steps[filled];
        ++filled;
    }
    bands_[depth] = {from.first, spreadOnward(here, from.first, filled, node.longest)};
}

// Spreads a row onward that is filled from `first` to `filled`; returns the last place that it
// reaches with what matters.
std::size_t TrieWalk::spreadOnward(double* row, std::size_t first, std::size_t filled,
                                   std::size_t longest) const
{
    const std::size_t last = places_.size() - 1;
    const double* most = most_.upTo(longest);
    if (!places_.jumps().empty()) {
        std::fill(row + filled + 1, row + last + 1, 0);
        places_.goOnward(row, first, last);
        std::size_t end = last;
        while (end > filled && row[end] * most[end] <= negligible())
            --end;
        return end;
    }
    const double* onward = places_.onward().data();
    for (std::size_t p = first; p < filled; ++p)
        row[p + 1] += row[p] * onward[p];
    for (; filled < last && row[filled] * most[filled] > negligible(); ++filled)
        row[filled + 1] = row[filled] * onward[filled];
    return filled;
}

void TrieWalk::take(std::uint32_t place, double odds)
{
    const double worth = odds * worthOf(place);
    if (worth < threshold() || odds <= 0)
        return;
    best_ = std::max(best_, worth);
    found_.push_back({trie_.texts()[place], odds});
}

double TrieWalk::sumOf(const double* weights, std::size_t depth) const
{
    const double* row = rowAt(depth);
    const Band& band = bands_[depth];
    double sums[2] = {0, 0};  // two, so that one need not wait for the other
    std::size_t p = band.first;
    for (; p < band.last; p += 2) {
        sums[0] += weights[p] * row[p];
        sums[1] += weights[p + 1] * row[p + 1];
    }
    if (p == band.last)
        sums[0] += weights[p] * row[p];
    return sums[0] + sums[1];
}

void TrieWalk::takeTexts(const TextTrie::Node& node, std::size_t depth)
{
    if (node.first_text == node.end_text)
        return;
    const double odds = sumOf(places_.end().data(), depth);
    if (odds < threshold() || odds <= 0)
        return;
    for (std::uint32_t place = node.first_text; place < node.end_text; ++place)
        take(place, odds);
}

// All texts below a node that goes on as many do, by what their endings come to.
void TrieWalk::takeTail(const TextTrie::Node& node, std::size_t depth)
{
    if (const double most = sumOf(tails_.mostOf(node.tail), depth); most < threshold() || most <= 0)
        return;
    double odds = 0;
    auto ending = trie_.tails()[node.tail].endings.begin();
    for (std::uint32_t place = node.end_text; place < node.end_below; ++place) {
        if (place == node.end_text || !trie_.repeats(place))
            odds = sumOf(tails_.ofEnding(*ending++), depth);
        take(place, odds);
    }
}

// Where a few texts begin, whether the best of them by its worth can come up to the threshold.
bool TrieWalk::isWorth(std::uint32_t number, double bound, bool among_few) const
{
    const TextTrie::Node& node = trie_.nodes()[number];
    return among_few || !limits_.worth || !node.few_below || bound * mostWorth(node) >= threshold();
}

// Each bound costs as much as a letter: where there is no branch, every other letter is enough.
void TrieWalk::visitOnlyChild(const TextTrie::Node& node, std::size_t depth)
{
    const TextTrie::Node& child = trie_.nodes()[node.first_child];
    if (depth % 2 == 0) {
        if (node.few_below && !lettersCanReach(node, depth))
            return;
        const double bound = boundOf(child, boundChildren(node, depth), depth);
        if (bound <= 0 || bound < threshold())
            return;
    }
    fillRow(child, depth + 1);
    visit(node.first_child, depth + 1);
}

// Likeliest branch first, so that the best text is known early.
void TrieWalk::visit(std::uint32_t number, std::size_t depth)
{
    const TextTrie::Node& node = trie_.nodes()[number];
    letters_from_[depth] = node.few_below && depth > 0 ? letters_from_[depth - 1] : 0;
    takeTexts(node, depth);
    if (node.tail != TextTrie::no_tail) {
        takeTail(node, depth);
        return;
    }
    if (node.first_child == node.end_child)
        return;
    if (node.first_child + 1 == node.end_child) {
        visitOnlyChild(node, depth);
        return;
    }
    if (node.few_below && !lettersCanReach(node, depth))
        return;
    std::vector<Child>& children = children_[depth];
    children.clear();
    const Ahead ahead = boundChildren(node, depth);
    for (std::uint32_t c = node.first_child; c < node.end_child; ++c) {
        const double bound = boundOf(trie_.nodes()[c], ahead, depth);
        if (bound > 0 && bound >= threshold() && isWorth(c, bound, node.few_below))
            children.push_back({bound, c});
    }
    std::sort(children.begin(), children.end(),
              [](const Child& a, const Child& b) { return a.bound > b.bound; });
    for (const Child& child : children) {
        if (child.bound < threshold())
            break;
        fillRow(trie_.nodes()[child.node], depth + 1);
        visit(child.node, depth + 1);
    }
}

std::vector<FoundText> TrieWalk::run()
{
    beginRoot();
    visit(0, 0);
    found_.erase(std::remove_if(found_.begin(), found_.end(),
                                [&](const FoundText& text) {
                                    return text.odds * limits_.worthOf(text.text) < threshold();
                                }),
                 found_.end());
    return std::move(found_);
}

}  // namespace models
