#include "models/trie_search.h"

#include <algorithm>
#include <cmath>

#include "models/letter_matches.h"

namespace models {

namespace {

// The forward table of the alignment, a column for each letter on the way from the root: values by
// the number of cells taken.
class TrieSearch {
public:
    TrieSearch(const TextTrie& trie, const std::vector<AlignedCell>& cells,
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
        for (std::size_t i = 0; i < cells.size(); ++i)
            if (cells[i].weights->stretch)
                stretches_.push_back(i);
    }

    std::vector<FoundText> run();

private:
    struct Band {  // first <= i <= last of the cells taken
        std::size_t first = 0, last = 0;
    };
    struct Child {
        double bound;
        std::uint32_t node;
    };

    void beginRoot();
    void fillColumn(std::size_t column, const TextTrie::Node& node, std::size_t depth);
    double stretchSum(std::size_t column, std::size_t cell, std::size_t depth) const;
    void boundChildren(const TextTrie::Node& node, std::size_t column, std::size_t depth);
    double pendingIn(std::size_t cell, std::size_t column, std::size_t depth) const;
    double boundOf(const TextTrie::Node& child, std::size_t depth) const;
    double boundByLetters(const TextTrie::Node& node, std::size_t column, std::size_t depth) const;
    double cutStart(std::size_t letters) const;
    void takeTexts(const TextTrie::Node& node, std::size_t column);
    void visit(std::uint32_t node, std::size_t column, std::size_t depth);
    double threshold() const { return std::max(limits_.least, limits_.share * best_); }
    // What a cell of a column may come to and still be left out.
    double negligible() const { return 1e-3 * threshold() / static_cast<double>(width_); }

    // A column holds the values, then for each unbounded stretch the sum it has taken so far, then
    // what a cut of the text's end has taken.
    std::size_t columnSize() const { return 2 * width_ + 1; }
    double& value(std::size_t column, std::size_t i) { return store_[column + i]; }
    double value(std::size_t column, std::size_t i) const { return store_[column + i]; }
    double& running(std::size_t column, std::size_t i) { return store_[column + width_ + i]; }
    double running(std::size_t column, std::size_t i) const { return store_[column + width_ + i]; }
    double& cutEnd(std::size_t column) { return store_[column + 2 * width_]; }
    double cutEnd(std::size_t column) const { return store_[column + 2 * width_]; }
    std::size_t newColumn()
    {
        const std::size_t column = used_;
        used_ += columnSize();
        if (store_.size() < used_)
            store_.resize(2 * used_);
        return column;
    }

    const TextTrie& trie_;
    const std::vector<AlignedCell>& cells_;
    const AlignmentPlan& plan_;
    const GapRates& rates_;
    const SearchLimits limits_;
    const Endings endings_;
    const std::size_t width_;
    const LetterMatches matches_;
    const MostToCome most_;
    std::vector<std::size_t> stretches_;
    std::vector<double> store_;
    std::size_t used_ = 0;
    std::vector<std::size_t> path_;  // columns from the root down
    std::vector<std::vector<Child>> children_;
    std::vector<Band> bands_;    // by depth: where the column holds anything that matters
    std::vector<double> ahead_;  // of boundChildren: [depth * width + cell]
    double ahead_skipped_ = 0, ahead_cut_ = 0, ahead_else_ = 0;
    std::vector<FoundText> found_;
    double best_;
};

void TrieSearch::beginRoot()
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
double TrieSearch::stretchSum(std::size_t column, std::size_t cell, std::size_t depth) const
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
double TrieSearch::cutStart(std::size_t letters) const
{
    return plan_.entry[0] * plan_.cut_left * std::pow(going_on, static_cast<double>(letters) - 1);
}

// Only where it can matter: from the first cell at which the column above does, to where nothing
// but stray cells would follow.
void TrieSearch::fillColumn(std::size_t column, const TextTrie::Node& node, std::size_t depth)
{
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

// What the texts below a node can come to at most, but for the letter that they go on with: by the
// cell that it falls on, and apart from it. Narrows the column's band to where that matters.
void TrieSearch::boundChildren(const TextTrie::Node& node, std::size_t column, std::size_t depth)
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
double TrieSearch::pendingIn(std::size_t cell, std::size_t column, std::size_t depth) const
{
    const CellWeights& stretch = *cells_[cell].weights;
    double pending = stretch.most ? 0 : running(column, cell);
    const auto most = static_cast<std::size_t>(stretch.most.value_or(stretch.least));
    for (std::size_t taken = 0; taken <= most && taken <= depth; ++taken)
        pending += value(path_[depth - taken], cell);
    return pending;
}

double TrieSearch::boundOf(const TextTrie::Node& child, std::size_t depth) const
{
    const double* match = matches_.ofLetter(child.letter);
    const double* ahead = &ahead_[depth * width_];
    const std::size_t end = std::min(bands_[depth].last + 1, cells_.size());
    double sum = 0;
    for (std::size_t i = bands_[depth].first; i < end; ++i)
        sum += match[i] * ahead[i];
    return (1 - child.skip) * sum + child.skip * ahead_skipped_ + ahead_else_;
}

// As the bound of the children, by the letters that come at all below a node: what is skipped and
// what is matched share a probability, so that the larger of the two bounds both.
double TrieSearch::boundByLetters(const TextTrie::Node& node, std::size_t column,
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

void TrieSearch::takeTexts(const TextTrie::Node& node, std::size_t column)
{
    if (node.first_text == node.end_text)
        return;
    const std::size_t last = cells_.size();
    double odds = plan_.exit[last] * plan_.cut_right * (1 - going_on) * cutEnd(column);
    if (endings_ == Endings::All) {
        odds += plan_.exit[last] * (1 - plan_.cut_right) * value(column, last);
        for (std::size_t i = 0; i < last; ++i)
            odds += plan_.exit[i] * value(column, i);
    }
    odds *= rates_.none;
    if (odds < threshold() || odds <= 0)
        return;
    for (std::uint32_t t = node.first_text; t < node.end_text; ++t) {
        const std::uint32_t text = trie_.texts()[t];
        best_ = std::max(best_, odds * (limits_.worth ? (*limits_.worth)[text] : 1));
        found_.push_back({text, odds});
    }
}

// Likeliest branch first, so that the best text is known early.
void TrieSearch::visit(std::uint32_t number, std::size_t column, std::size_t depth)
{
    const TextTrie::Node& node = trie_.nodes()[number];
    takeTexts(node, column);
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

std::vector<FoundText> TrieSearch::run()
{
    children_.resize(trie_.depth() + 1);
    beginRoot();
    visit(0, path_.front(), 0);
    found_.erase(std::remove_if(found_.begin(), found_.end(),
                                [&](const FoundText& text) { return text.odds < threshold(); }),
                 found_.end());
    return std::move(found_);
}

}  // namespace

std::vector<FoundText> searchTrie(const TextTrie& trie, const std::vector<AlignedCell>& cells,
                                  const AlignmentPlan& plan, const GapRates& rates,
                                  const SearchLimits& limits, Endings endings)
{
    return TrieSearch(trie, cells, plan, rates, limits, endings).run();
}

}  // namespace models
