// What is still to come below a node of a trie: the part of TrieWalk that leaves branches.
#include <algorithm>

#include "models/trie_walk.h"

namespace models {

namespace {

// Letters for which a bound by the letters below serves before it is worked out again.
constexpr std::size_t letters_between = 2;

}  // namespace

// Narrows the row's band to where what is to come matters.
TrieWalk::Ahead TrieWalk::boundChildren(const TextTrie::Node& node, std::size_t depth)
{
    const double *from = most_.from(node.shortest_below), *up_to = most_.upTo(node.longest - 1);
    const double* most_stays = matches_.mostStays().data();
    const double* most_steps = matches_.mostSteps().data();
    const double* row = rowAt(depth);
    Band& band = bands_[depth];
    std::size_t first = band.last, last = band.first;
    Ahead sum;
    double coming = std::min(from[band.first], up_to[band.first]);
    for (std::size_t p = band.first; p <= band.last; ++p) {
        const bool goes_on = p + 1 < places_.size();
        const double behind = goes_on ? std::min(from[p + 1], up_to[p + 1]) : 0;
        const double stays = row[p] * coming;
        ahead_[p] = row[p] * behind;
        sum.skipped += is_skipped_[p] * stays;
        sum.taken += is_taken_[p] * stays;
        if (stays * most_stays[p] + ahead_[p] * most_steps[p] > negligible()) {
            first = std::min(first, p);
            last = p;
        }
        coming = behind;
    }
    band = {first, std::max(first, last)};
    sum.taken *= going_on;
    return sum;
}

double TrieWalk::boundOf(const TextTrie::Node& child, const Ahead& ahead, std::size_t depth) const
{
    const double* steps = matches_.steps(child.letter);
    const Band& band = bands_[depth];
    double sums[2] = {0, 0};  // two, so that one need not wait for the other
    std::size_t p = band.first;
    for (; p < band.last; p += 2) {
        sums[0] += steps[p] * ahead_[p];
        sums[1] += steps[p + 1] * ahead_[p + 1];
    }
    if (p == band.last)
        sums[0] += steps[p] * ahead_[p];
    return sums[0] + sums[1] + none_ * trie_.skip(child.letter) * ahead.skipped + ahead.taken;
}

// By the letters that come at all below a node, and by what its few texts are worth. What was
// worked out one or two letters before, for more letters, bounds as well.
bool TrieWalk::lettersCanReach(const TextTrie::Node& node, std::size_t depth)
{
    std::size_t& from = letters_from_[depth];
    if (from == 0)
        few_worth_ = mostWorth(node);
    if (from == 0 || from + letters_between < depth) {
        from = depth;
        weighLetters(node, depth);
    }
    const double* row = rowAt(depth);
    const double* to_come = &letters_to_come_[from * (places_.size() + 1)];
    double sum = 0;
    for (std::size_t p = bands_[depth].first; p <= bands_[depth].last; ++p)
        sum += row[p] * to_come[p];
    return sum * few_worth_ >= threshold();
}

double TrieWalk::mostWorth(const TextTrie::Node& node) const
{
    double most = 0;
    for (std::uint32_t place = node.first_text; place < node.end_below; ++place)
        most = std::max(most, worthOf(place));
    return most;
}

// A letter that is skipped and one that is matched share a probability, so that the larger of the
// two bounds both.
void TrieWalk::weighLetters(const TextTrie::Node& node, std::size_t depth)
{
    using Places = AlignmentPlaces;
    double* to_come = &letters_to_come_[depth * (places_.size() + 1)];
    auto jump = places_.jumps().rbegin();
    for (std::size_t p = places_.size(); p-- > bands_[depth].first;) {
        double here = places_.end()[p] + places_.onward()[p] * to_come[p + 1];
        for (; jump != places_.jumps().rend() && jump->from == p; ++jump)
            here += jump->weight * to_come[jump->to];
        const Places::Place& place = places_[p];
        double stepped = 0;
        if (place.step == Places::Step::Match)
            stepped = matches_.likeliestStep(p, node.letters_below) * to_come[p + 1];
        else if (place.step == Places::Step::Free)
            stepped = to_come[p + 1];
        if (place.stay == Places::Stay::Taken)  // left once, behind some letter
            to_come[p] = places_.end()[p] + (here - places_.end()[p]) / (1 - going_on);
        else if (place.step == Places::Step::Free)
            to_come[p] = (here + stepped) / (1 - matches_.mostStays()[p]);
        else
            to_come[p] = std::max(here + stepped, here * any_skipped_);
    }
}

}  // namespace models
