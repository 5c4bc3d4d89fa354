#include "models/trie_walk.h"

#include <algorithm>
#include <cmath>

namespace models {

TrieWalk::TrieWalk(const TextTrie& trie, const std::vector<AlignedCell>& cells,
                   const AlignmentPlan& plan, const GapRates& rates, const SearchLimits& limits,
                   Endings endings)
    : trie_(trie),
      cells_(cells),
      plan_(plan),
      rates_(rates),
      limits_(limits),
      endings_(endings),
      width_(cells.size() + 1),
      matches_(trie, cells, rates),
      most_(cells, matches_.most(), plan, rates, endings, trie.depth()),
      best_(limits.best_before)
{
    for (std::size_t i = 0; i < cells.size(); ++i) {
        stray_.push_back(cells[i].stray);
        if (cells[i].weights->stretch)
            stretches_.push_back(i);
    }
    is_plain_ = stretches_.empty() && plan.cut_left <= 0;
    if (is_plain_ && endings == Endings::All)
        tails_.resize(trie.tails().size());
}

void TrieWalk::beginRoot()
{
    const std::size_t root = newColumn();
    path_.assign(trie_.depth() + 2, root);
    bands_.assign(trie_.depth() + 2, {0, cells_.size()});
    ahead_.assign((trie_.depth() + 1) * width_, 0);
    std::fill(store_.begin(), store_.begin() + static_cast<long>(columnSize()), 0);
    value(root, 0) = plan_.entry[0] * (1 - plan_.cut_left);
    for (std::size_t i = 0; i < cells_.size(); ++i) {
        value(root, i + 1) = value(root, i) * cells_[i].stray + plan_.entry[i + 1];
        if (!cells_[i].weights->stretch)
            continue;
        if (cells_[i].weights->least == 0)
            running(root, i) = value(root, i);
        value(root, i + 1) += stretchSum(root, i, 0);
    }
}

// What a stretch gives to the column of the letter at `depth`, having taken its number of letters.
double TrieWalk::stretchSum(std::size_t column, std::size_t cell, std::size_t depth) const
{
    const CellWeights& stretch = *cells_[cell].weights;
    if (!stretch.most)
        return running(column, cell) * (1 - going_on);
    double sum = 0;
    for (auto taken = static_cast<std::size_t>(stretch.least);
         taken <= static_cast<std::size_t>(*stretch.most) && taken <= depth; ++taken)
        sum += value(taken == 0 ? column : path_[depth - taken], cell);
    return sum / (*stretch.most - stretch.least + 1);
}

// The weight of texts that begin behind so many letters, or more, which lie beyond the first cell.
double TrieWalk::cutStart(std::size_t letters) const
{
    return plan_.entry[0] * plan_.cut_left * std::pow(going_on, static_cast<double>(letters) - 1);
}

// Only where it can matter: from the first cell at which the column above does, to where nothing
// but stray cells would follow.
void TrieWalk::fillColumn(std::size_t column, const TextTrie::Node& node, std::size_t depth)
{
    if (is_plain_) {
        fillPlain(column, node, depth);
        return;
    }
    const std::size_t above = path_[depth - 1], last = cells_.size();
    const Band from = bands_[depth - 1];
    const double skip = rates_.none * node.skip, stays = 1 - node.skip;
    const double* match = matches_.ofLetter(node.letter);
    std::fill_n(store_.begin() + static_cast<long>(column), width_, 0);
    value(column, from.first) = value(above, from.first) * skip;
    if (plan_.cut_left > 0)
        value(column, 0) += cutStart(depth) * (1 - going_on);
    std::size_t i = from.first;
    for (; i < last; ++i) {
        if (i > from.last && value(column, i) * most_.ofAnyLength(i, node.longest) <= negligible())
            break;
        double sum = value(column, i) * cells_[i].stray + value(above, i + 1) * skip;
        if (cells_[i].weights->stretch) {
            const auto least = static_cast<std::size_t>(cells_[i].weights->least);
            running(column, i) = going_on * running(above, i);
            if (depth >= least)
                running(column, i) += value(least == 0 ? column : path_[depth - least], i);
            sum += stretchSum(column, i, depth);
        } else {
            sum += value(above, i) * stays * match[i];
        }
        value(column, i + 1) = sum;
    }
    bands_[depth] = {from.first, i};
    cutEnd(column) = going_on * cutEnd(above) + value(above, last);
}

// The same where there are neither stretches nor cut beginnings; beside the band it is left as it
// was, but for the last cell.
void TrieWalk::fillPlain(std::size_t column, const TextTrie::Node& node, std::size_t depth)
{
    const std::size_t last = cells_.size();
    const Band from = bands_[depth - 1];
    const double skip = rates_.none * node.skip, stays = 1 - node.skip;
    const double *match = matches_.ofLetter(node.letter), *above = &store_[path_[depth - 1]];
    double* here = &store_[column];
    here[last] = 0;
    here[from.first] = above[from.first] * skip;
    const std::size_t end = std::min(from.last, last);
    std::size_t i = from.first;
    for (; i < end; ++i)
        here[i + 1] = above[i] * stays * match[i] + above[i + 1] * skip;
    for (i = from.first; i < end; ++i)
        here[i + 1] += here[i] * stray_[i];
    if (i < last) {
        here[i + 1] = here[i] * stray_[i] + above[i] * stays * match[i];
        for (++i; i < last && here[i] * most_.ofAnyLength(i, node.longest) > negligible(); ++i)
            here[i + 1] = here[i] * stray_[i];
    }
    bands_[depth] = {from.first, i};
    cutEnd(column) = going_on * cutEnd(path_[depth - 1]) + above[last];
}

void TrieWalk::take(std::uint32_t place, double odds)
{
    const std::uint32_t text = trie_.texts()[place];
    best_ = std::max(best_, odds * (limits_.worth ? (*limits_.worth)[text] : 1));
    found_.push_back({text, odds});
}

void TrieWalk::takeTexts(const TextTrie::Node& node, std::size_t column, std::size_t depth)
{
    if (node.first_text == node.end_text)
        return;
    const std::size_t last = cells_.size();
    const Band& band = bands_[depth];
    double odds = plan_.exit[last] * plan_.cut_right * (1 - going_on) * cutEnd(column);
    if (endings_ == Endings::All) {
        odds += plan_.exit[last] * (1 - plan_.cut_right) * value(column, last);
        for (std::size_t i = band.first; i < std::min(band.last + 1, last); ++i)
            odds += plan_.exit[i] * value(column, i);
    }
    odds *= rates_.none;
    if (odds < threshold() || odds <= 0)
        return;
    for (std::uint32_t place = node.first_text; place < node.end_text; ++place)
        take(place, odds);
}

// All texts below a node that goes on as many do, by what their endings come to.
void TrieWalk::takeTail(const TextTrie::Node& node, std::size_t column, std::size_t depth)
{
    std::unique_ptr<TailSums>& tail = tails_[node.tail];
    if (!tail)
        tail =
            std::make_unique<TailSums>(trie_.tails()[node.tail], matches_, cells_, plan_, rates_);
    const Band& band = bands_[depth];
    const auto oddsBy = [&](const double* sums, double cut) {
        double odds = cut * cutEnd(column);
        for (std::size_t i = band.first; i <= band.last; ++i)
            odds += sums[i] * value(column, i);
        return odds;
    };
    if (const double most = oddsBy(tail->most(), tail->mostCut()); most < threshold() || most <= 0)
        return;
    double odds = 0;
    std::size_t ending = 0;
    for (std::uint32_t place = node.end_text; place < node.end_below; ++place) {
        if (place == node.end_text || !trie_.repeats(place)) {
            odds = oddsBy(tail->of(ending), tail->cutOf(ending));
            ++ending;
        }
        if (odds >= threshold() && odds > 0)
            take(place, odds);
    }
}

// Likeliest branch first, so that the best text is known early.
void TrieWalk::visit(std::uint32_t number, std::size_t column, std::size_t depth)
{
    const TextTrie::Node& node = trie_.nodes()[number];
    takeTexts(node, column, depth);
    if (node.tail != TextTrie::no_tail && !tails_.empty()) {
        takeTail(node, column, depth);
        return;
    }
    const std::size_t kept = used_;
    std::vector<Child>& children = children_[depth];
    children.clear();
    if (node.first_child < node.end_child) {
        boundChildren(node, column, depth);
        // Each bound costs as much as a letter: every other letter is enough.
        if (node.few_below && depth % 2 == 0 && boundByLetters(node, column, depth) < threshold())
            return;
    }
    for (std::uint32_t c = node.first_child; c < node.end_child; ++c) {
        const double bound = boundOf(trie_.nodes()[c], depth);
        if (bound > 0 && bound >= threshold())
            children.push_back({bound, c});
    }
    if (children.size() > 1)
        std::sort(children.begin(), children.end(),
                  [](const Child& a, const Child& b) { return a.bound > b.bound; });
    const std::size_t below = newColumn();
    for (const Child& child : children) {
        if (child.bound < threshold())
            break;
        path_[depth + 1] = below;
        fillColumn(below, trie_.nodes()[child.node], depth + 1);
        visit(child.node, below, depth + 1);
    }
    used_ = kept;
}

std::vector<FoundText> TrieWalk::run()
{
    children_.resize(trie_.depth() + 1);
    beginRoot();
    visit(0, path_.front(), 0);
    found_.erase(std::remove_if(found_.begin(), found_.end(),
                                [&](const FoundText& text) { return text.odds < threshold(); }),
                 found_.end());
    return std::move(found_);
}

}  // namespace models
