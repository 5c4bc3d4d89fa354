#pragma once

#include <algorithm>
#include <cstdint>
#include <memory>
#include <vector>

#include "models/letter_matches.h"
#include "models/most_to_come.h"
#include "models/tail_sums.h"
#include "models/trie_search.h"

namespace models {

// One search of a trie (trie_search.h). The forward table of the alignment, a column for each
// letter on the way from the root: values by the number of cells taken.
class TrieWalk {
public:
    TrieWalk(const TextTrie& trie, const std::vector<AlignedCell>& cells, const AlignmentPlan& plan,
             const GapRates& rates, const SearchLimits& limits, Endings endings);

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
    void takeTexts(const TextTrie::Node& node, std::size_t column, std::size_t depth);
    void takeTail(const TextTrie::Node& node, std::size_t column, std::size_t depth);
    void take(std::uint32_t place, double odds);
    void fillPlain(std::size_t column, const TextTrie::Node& node, std::size_t depth);
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
    std::vector<double> stray_;  // by cell
    bool is_plain_ = false;      // no stretches, and the texts' beginnings are not cut off
    std::vector<std::unique_ptr<TailSums>> tails_;  // made when first needed; none: not to be used
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

}  // namespace models
