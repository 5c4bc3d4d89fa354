#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <map>
#include <utility>
#include <vector>

#include "models/text_alignment.h"

namespace models {

// Many texts as one tree of letters, so that what they begin with is matched once for all of them.
class TextTrie {
public:
    enum class Direction { Forward, Backward };  // from a text's first letter, or from its last

    struct Node {
        std::uint32_t letter = 0;                      // by number; of the root, nothing
        std::uint32_t first_child = 0, end_child = 0;  // nodes first_child <= i < end_child
        std::uint32_t first_text = 0, end_text = 0;    // likewise into texts(): those ending here
        // Letters to come until a text ends: at most, and at least behind any child.
        std::uint32_t longest = 0, shortest_below = 0;
        std::uint64_t letters_below = 0;  // those of all children on, by bitOf()
        bool few_below = false;           // so few texts that their letters tell them apart
        std::uint32_t end_below = 0;      // of all texts below and here: end_text <= i < end_below
        std::uint32_t tail = no_tail;     // number of the tail that they are, or none
    };

    // The end of a text: a letter, and the end behind it.
    struct Ending {
        std::uint32_t letter = 0, rest = 0;  // number of a shorter ending, no_ending for none
    };
    static constexpr std::uint32_t no_ending = std::numeric_limits<std::uint32_t>::max();

    // How texts may go on behind a node, where many nodes go on alike (" & CO", " LTD"): numbers of
    // endings, in the order of the texts below.
    struct Tail {
        std::vector<std::uint32_t> endings;
    };
    static constexpr std::uint32_t no_tail = std::numeric_limits<std::uint32_t>::max();

    // A letter's place in letters_below; a trie of many letters has several in one place.
    static std::uint64_t bitOf(std::uint32_t letter) { return std::uint64_t{1} << (letter % 64); }

    // `texts` may repeat and may be empty. A letter leaves no cell as easily in all of them.
    TextTrie(const std::vector<MatchText>& texts, Direction direction);

    const std::vector<Node>& nodes() const { return nodes_; }           // the first is the root
    const std::vector<std::uint32_t>& texts() const { return texts_; }  // by number
    const std::vector<Tail>& tails() const { return tails_; }
    // Each once, shorter ones first: many tails share them.
    const std::vector<Ending>& endings() const { return endings_; }
    // Whether a place of texts() holds the same letters as the place before it.
    bool repeats(std::uint32_t place) const { return repeats_[place]; }
    // How easily a letter leaves no cell, 0 to 1.
    double skip(std::uint32_t letter) const { return skips_[letter]; }
    std::size_t depth() const { return depth_; }                            // of the longest text
    const std::vector<std::uint32_t>& letters() const { return letters_; }  // ascending, each once

private:
    void countLettersToCome();
    void findTails();
    void addEndings(std::uint32_t node, std::vector<std::uint32_t>& letters, Tail& tail);
    std::uint32_t endingOf(const std::vector<std::uint32_t>& letters);

    std::vector<Node> nodes_;
    std::vector<Tail> tails_;
    std::vector<Ending> endings_;
    std::map<std::pair<std::uint32_t, std::uint32_t>, std::uint32_t> ending_numbers_;
    std::vector<bool> repeats_;
    std::vector<double> skips_;  // by letter
    std::vector<std::uint32_t> texts_, letters_;
    std::size_t depth_ = 0;
};

}  // namespace models
