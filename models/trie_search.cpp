#include "models/trie_search.h"

#include "models/trie_walk.h"

namespace models {

std::vector<FoundText> searchTrie(const TextTrie& trie, const std::vector<AlignedCell>& cells,
                                  const AlignmentPlan& plan, const GapRates& rates,
                                  const SearchLimits& limits, Endings endings)
{
    return TrieWalk(trie, cells, plan, rates, limits, endings).run();
}

double meanOdds(const TextTrie& trie, const std::vector<AlignedCell>& cells,
                const AlignmentPlan& plan, const GapRates& rates, double least)
{
    double sum = 0;
    for (const FoundText& text : searchTrie(trie, cells, plan, rates, {least, 0, 0, nullptr}))
        sum += text.odds;
    return trie.texts().empty() ? 0 : sum / static_cast<double>(trie.texts().size());
}

}  // namespace models
