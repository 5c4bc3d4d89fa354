#include "models/text_trie.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <set>
#include <unordered_map>

namespace models {

namespace {

// Texts by letter from either end.
class DirectedTexts {
public:
    DirectedTexts(const std::vector<MatchText>& texts, TextTrie::Direction direction)
        : texts_(texts), backward_(direction == TextTrie::Direction::Backward)
    {
    }

    std::size_t length(std::uint32_t text) const { return texts_[text].letters.size(); }
    std::size_t letter(std::uint32_t text, std::size_t i) const
    {
        return texts_[text].letters[place(text, i)];
    }
    double skip(std::uint32_t text, std::size_t i) const
    {
        return texts_[text].skip[place(text, i)];
    }
    bool isBefore(std::uint32_t a, std::uint32_t b) const
    {
        for (std::size_t i = 0; i < length(a) && i < length(b); ++i)
            if (letter(a, i) != letter(b, i))
                return letter(a, i) < letter(b, i);
        return length(a) < length(b);
    }

private:
    std::size_t place(std::uint32_t text, std::size_t i) const
    {
        return backward_ ? length(text) - 1 - i : i;
    }

    const std::vector<MatchText>& texts_;
    bool backward_;
};

constexpr std::size_t few_texts = 16;
// Nodes that must go on alike to make it worth working their endings out apart, and the texts below
// one of them at most.
constexpr std::size_t least_alike = 12, most_endings = 200;

// One number of two (a step of splitmix64, Steele, Lea and Flood 2014).
std::uint64_t mixed(std::uint64_t a, std::uint64_t b)
{
    std::uint64_t x = a + 0x9e3779b97f4a7c15U * (b + 1);
    x = (x ^ (x >> 30U)) * 0xbf58476d1ce4e5b9U;
    x = (x ^ (x >> 27U)) * 0x94d049bb133111ebU;
    return x ^ (x >> 31U);
}

// The texts of a node's whole subtree, as a range of the sorted ones.
struct Subtree {
    std::size_t node = 0, first = 0, end = 0, depth = 0;
};

}  // namespace

TextTrie::TextTrie(const std::vector<MatchText>& texts, Direction direction)
    : repeats_(texts.size(), false), texts_(texts.size())
{
    const DirectedTexts directed(texts, direction);
    std::iota(texts_.begin(), texts_.end(), 0U);
    std::stable_sort(texts_.begin(), texts_.end(),
                     [&](auto a, auto b) { return directed.isBefore(a, b); });
    nodes_.emplace_back();
    // Level by level, so that a node's children stand side by side.
    std::vector<Subtree> level = {{0, 0, texts_.size(), 0}};
    for (std::size_t next = 0; next < level.size(); ++next) {
        const Subtree at = level[next];
        depth_ = std::max(depth_, at.depth);
        std::size_t i = at.first;
        while (i < at.end && directed.length(texts_[i]) == at.depth)
            ++i;
        nodes_[at.node].first_text = static_cast<std::uint32_t>(at.first);
        nodes_[at.node].end_text = static_cast<std::uint32_t>(i);
        nodes_[at.node].end_below = static_cast<std::uint32_t>(at.end);
        for (std::size_t same = at.first + 1; same < i; ++same)
            repeats_[same] = true;
        nodes_[at.node].few_below = at.end - at.first <= few_texts;
        nodes_[at.node].first_child = static_cast<std::uint32_t>(nodes_.size());
        while (i < at.end) {
            const std::size_t first = i, letter = directed.letter(texts_[i], at.depth);
            if (letter >= skips_.size())
                skips_.resize(letter + 1, 0);
            skips_[letter] = directed.skip(texts_[i], at.depth);
            while (i < at.end && directed.letter(texts_[i], at.depth) == letter)
                ++i;
            Node child;
            child.letter = static_cast<std::uint32_t>(letter);
            level.push_back({nodes_.size(), first, i, at.depth + 1});
            nodes_.push_back(child);
        }
        nodes_[at.node].end_child = static_cast<std::uint32_t>(nodes_.size());
    }
    countLettersToCome();
    findTails();
    std::set<std::uint32_t> letters;
    for (std::size_t n = 1; n < nodes_.size(); ++n)
        letters.insert(nodes_[n].letter);
    letters_.assign(letters.begin(), letters.end());
}

void TextTrie::countLettersToCome()
{
    constexpr auto none = std::numeric_limits<std::uint32_t>::max();
    for (std::size_t n = nodes_.size(); n-- > 0;) {
        Node& node = nodes_[n];
        node.shortest_below = node.first_child < node.end_child ? none : 0;
        for (std::uint32_t c = node.first_child; c < node.end_child; ++c) {
            const Node& child = nodes_[c];
            const bool ends = child.first_text < child.end_text;
            node.shortest_below =
                std::min(node.shortest_below, ends ? 0 : child.shortest_below + 1);
            node.longest = std::max(node.longest, child.longest + 1);
            node.letters_below |= bitOf(child.letter) | child.letters_below;
        }
    }
}

// Nodes that go on alike have one number, made from the bottom up; children stand behind their
// parents.
void TextTrie::findTails()
{
    std::vector<std::uint64_t> kinds(nodes_.size(), 0);
    std::unordered_map<std::uint64_t, std::size_t> counts;
    for (std::size_t n = nodes_.size(); n-- > 0;) {
        for (std::uint32_t c = nodes_[n].first_child; c < nodes_[n].end_child; ++c) {
            const bool ends = nodes_[c].first_text < nodes_[c].end_text;
            kinds[n] = mixed(mixed(mixed(kinds[n], nodes_[c].letter), ends ? 1 : 2), kinds[c]);
        }
        ++counts[kinds[n]];
    }
    std::unordered_map<std::uint64_t, std::uint32_t> numbers;
    for (std::uint32_t n = 1; n < nodes_.size(); ++n) {
        Node& node = nodes_[n];
        if (node.first_child == node.end_child || counts[kinds[n]] < least_alike ||
            node.end_below - node.end_text > most_endings)
            continue;
        const auto [found, is_new] =
            numbers.emplace(kinds[n], static_cast<std::uint32_t>(tails_.size()));
        if (is_new) {
            std::vector<std::uint32_t> letters;
            addEndings(n, letters, tails_.emplace_back());
        }
        node.tail = found->second;
    }
}

void TextTrie::addEndings(std::uint32_t node, std::vector<std::uint32_t>& letters, Tail& tail)
{
    for (std::uint32_t c = nodes_[node].first_child; c < nodes_[node].end_child; ++c) {
        letters.push_back(nodes_[c].letter);
        if (nodes_[c].first_text < nodes_[c].end_text)
            tail.endings.push_back(endingOf(letters));
        addEndings(c, letters, tail);
        letters.pop_back();
    }
}

std::uint32_t TextTrie::endingOf(const std::vector<std::uint32_t>& letters)
{
    std::uint32_t ending = no_ending;
    for (auto letter = letters.rbegin(); letter != letters.rend(); ++letter) {
        const auto number = static_cast<std::uint32_t>(endings_.size());
        const auto [found, is_new] = ending_numbers_.emplace(std::pair(*letter, ending), number);
        if (is_new)
            endings_.push_back({*letter, ending});
        ending = found->second;
    }
    return ending;
}

}  // namespace models
