#include "models/trie_search.h"

#include "models/trie_walk.h"

namespace models {

std::vector<FoundText> searchTrie(const TextTrie& trie, const std::vector<AlignedCell>& cells,
                                  const AlignmentPlan& plan, const GapRates& rates,
                                  const SearchLimits& limits, Endings endings)
{
    return TrieWalk(trie, cells, plan, rates, limits, endings).run();
}

}  // namespace models
