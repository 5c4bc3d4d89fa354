// What is still to come below a node of a trie: the part of TrieWalk that leaves branches.
#include "models/trie_walk.h"

#include <algorithm>

namespace models {

// What the texts below a node can come to at most, but for the letter that they go on with: by the
// cell that it falls on, and apart from it. Narrows the column's band to where that matters.
void TrieWalk::boundChildren(const TextTrie::Node& node, std::size_t column, std::size_t depth)
{
    const std::size_t shortest = node.shortest_below, longest = node.longest - 1;
    double* ahead = &ahead_[depth * width_];
    double skipped = 0;
    Band& band = bands_[depth];
    std::size_t first = band.last, last = band.first;
    for (std::size_t i = band.first; i <= band.last; ++i) {
        const double stays = rates_.none * value(column, i) * most_.ofLength(i, shortest, longest);
        const bool matches = i < cells_.size() && !cells_[i].weights->stretch;
        ahead[i] = matches ? value(column, i) * most_.ofLength(i + 1, shortest, longest) : 0;
        skipped += stays;
        if (stays + ahead[i] * (matches ? matches_.most()[i] : 0) > negligible()) {
            first = std::min(first, i);
            last = i;
        }
    }
    if (stretches_.empty() && plan_.cut_left <= 0)
        band = {first, std::max(first, last)};
    ahead_skipped_ = skipped;
    ahead_cut_ = rates_.none * plan_.exit.back() * plan_.cut_right * (1 - going_on) *
                 (cutEnd(column) + value(column, cells_.size()));
    if (plan_.cut_left > 0)
        ahead_cut_ += cutStart(depth + 1) * most_.ofAnyLength(0, longest);
    ahead_else_ = ahead_cut_;
    for (const std::size_t cell : stretches_)
        ahead_else_ += pendingIn(cell, column, depth) * most_.ofAnyLength(cell + 1, longest);
}

// Letters that a stretch has begun to take and not yet given on.
double TrieWalk::pendingIn(std::size_t cell, std::size_t column, std::size_t depth) const
{
    const CellWeights& stretch = *cells_[cell].weights;
    double pending = stretch.most ? 0 : running(column, cell);
    const auto most = static_cast<std::size_t>(stretch.most.value_or(stretch.least));
    for (std::size_t taken = 0; taken <= most && taken <= depth; ++taken)
        pending += value(path_[depth - taken], cell);
    return pending;
}

double TrieWalk::boundOf(const TextTrie::Node& child, std::size_t depth) const
{
    const double* match = matches_.ofLetter(child.letter);
    const double* ahead = &ahead_[depth * width_];
    const std::size_t end = std::min(bands_[depth].last + 1, cells_.size());
    double sums[2] = {0, 0};  // two, so that one need not wait for the other
    std::size_t i = bands_[depth].first;
    for (; i + 1 < end; i += 2) {
        sums[0] += match[i] * ahead[i];
        sums[1] += match[i + 1] * ahead[i + 1];
    }
    if (i < end)
        sums[0] += match[i] * ahead[i];
    return (1 - child.skip) * (sums[0] + sums[1]) + child.skip * ahead_skipped_ + ahead_else_;
}

// As the bound of the children, by the letters that come at all below a node: what is skipped and
// what is matched share a probability, so that the larger of the two bounds both.
double TrieWalk::boundByLetters(const TextTrie::Node& node, std::size_t column,
                                std::size_t depth) const
{
    const Band& band = bands_[depth];
    const bool all = endings_ == Endings::All;
    const double over = all ? 1 : plan_.cut_right * (1 - going_on);
    double to_come = rates_.none * plan_.exit.back() * over, bound = 0;
    if (band.last == cells_.size())
        bound += value(column, cells_.size()) * to_come;
    for (std::size_t i = cells_.size(); i-- > band.first;) {
        if (cells_[i].weights->stretch)
            bound += pendingIn(i, column, depth) * to_come;
        const double match = matches_.likeliest(i, node.letters_below);
        const double beside = (all ? rates_.none * plan_.exit[i] : 0) + cells_[i].stray * to_come;
        to_come = std::max(beside + match * to_come, beside / (1 - rates_.none));
        if (i <= band.last)
            bound += value(column, i) * to_come;
    }
    return bound + ahead_cut_;
}

}  // namespace models
