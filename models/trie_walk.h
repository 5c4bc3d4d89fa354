#pragma once

#include <algorithm>
#include <cstdint>
#include <vector>

#include "models/alignment_places.h"
#include "models/letter_matches.h"
#include "models/most_to_come.h"
#include "models/tail_sums.h"
#include "models/trie_search.h"

namespace models {

// One search of a trie (trie_search.h). The forward table of the alignment, a row of places for
// each letter on the way from the root.
class TrieWalk {
public:
    TrieWalk(const TextTrie& trie, const std::vector<AlignedCell>& cells, const AlignmentPlan& plan,
             const GapRates& rates, const SearchLimits& limits, Endings endings);

    std::vector<FoundText> run();

private:
    struct Band {  // first <= place <= last
        std::size_t first = 0, last = 0;
    };
    struct Child {
        double bound;
        std::uint32_t node;
    };
    // What the texts below a node can come to at most, but for the letter that they go on with:
    // where it leaves no cell, where a stretch takes it, and (in ahead_) by the place it steps
    // from.
    struct Ahead {
        double skipped = 0, taken = 0;
    };

    void beginRoot();
    void fillRow(const TextTrie::Node& node, std::size_t depth);
    std::size_t spreadOnward(double* row, std::size_t first, std::size_t filled,
                             std::size_t longest) const;
    Ahead boundChildren(const TextTrie::Node& node, std::size_t depth);
    double boundOf(const TextTrie::Node& child, const Ahead& ahead, std::size_t depth) const;
    bool lettersCanReach(const TextTrie::Node& node, std::size_t depth);
    void weighLetters(const TextTrie::Node& node, std::size_t depth);
    void takeTexts(const TextTrie::Node& node, std::size_t depth);
    void takeTail(const TextTrie::Node& node, std::size_t depth);
    void take(std::uint32_t place, double odds);
    double sumOf(const double* weights, std::size_t depth) const;
    void visit(std::uint32_t node, std::size_t depth);
    void visitOnlyChild(const TextTrie::Node& node, std::size_t depth);
    double worthOf(std::uint32_t place) const { return limits_.worthOf(trie_.texts()[place]); }
    double mostWorth(const TextTrie::Node& node) const;
    bool isWorth(std::uint32_t node, double bound, bool among_few) const;
    double threshold() const { return std::max(limits_.least, limits_.share * best_); }
    // What a place of a row may come to and still be left out.
    double negligible() const { return 1e-3 * threshold() / static_cast<double>(places_.size()); }

    double* rowAt(std::size_t depth) { return &rows_[depth * places_.size()]; }
    const double* rowAt(std::size_t depth) const { return &rows_[depth * places_.size()]; }

    const TextTrie& trie_;
    const SearchLimits limits_;
    const AlignmentPlaces places_;
    const double none_;         // of going on to the next letter
    const double any_skipped_;  // by any number of letters that leave no cell, at most
    const LetterMatches matches_;
    const MostToCome most_;
    std::vector<double> is_skipped_, is_taken_;  // by place, what a letter does that stays: 0 or 1
    TailSums tails_;
    std::vector<double> rows_;                  // by depth; outside its band a row is void
    std::vector<Band> bands_;                   // by depth: where the row holds what matters
    std::vector<std::vector<Child>> children_;  // by depth
    std::vector<double> ahead_;
    // By depth, what may come at most of a few texts' letters, with one place more than a row; and
    // how far up it was worked out.
    std::vector<double> letters_to_come_;
    std::vector<std::size_t> letters_from_;
    double few_worth_ = 1;  // of these few texts, the highest worth
    std::vector<FoundText> found_;
    double best_;
};

}  // namespace models
