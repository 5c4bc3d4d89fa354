#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "models/text_alignment.h"

namespace models {

// Many texts as one tree of letters, so that what they begin with is matched once for all of them.
class TextTrie {
public:
    enum class Direction { Forward, Backward };  // from a text's first letter, or from its last

    struct Node {
        std::uint32_t letter = 0;                      // by number; of the root, nothing
        double skip = 0;                               // how easily it leaves no cell
        std::uint32_t first_child = 0, end_child = 0;  // nodes first_child <= i < end_child
        std::uint32_t first_text = 0, end_text = 0;    // likewise into texts(): those ending here
        // Letters to come until a text ends: at most, and at least behind any child.
        std::uint32_t longest = 0, shortest_below = 0;
        std::uint64_t letters_below = 0;  // those of all children on, by bitOf()
        bool few_below = false;           // so few texts that their letters tell them apart
    };

    // A letter's place in letters_below; a trie of many letters has several in one place.
    static std::uint64_t bitOf(std::uint32_t letter) { return std::uint64_t{1} << (letter % 64); }

    // `texts` may repeat and may be empty.
    TextTrie(const std::vector<MatchText>& texts, Direction direction);

    const std::vector<Node>& nodes() const { return nodes_; }               // the first is the root
    const std::vector<std::uint32_t>& texts() const { return texts_; }      // by number
    std::size_t depth() const { return depth_; }                            // of the longest text
    const std::vector<std::uint32_t>& letters() const { return letters_; }  // ascending, each once

private:
    void countLettersToCome();

    std::vector<Node> nodes_;
    std::vector<std::uint32_t> texts_, letters_;
    std::size_t depth_ = 0;
};

}  // namespace models
