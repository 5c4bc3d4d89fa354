#include "models/mark_spellings.h"

#include <algorithm>
#include <set>

#include "models/letters.h"

namespace models {

namespace {

constexpr double as_registered = 0.7;  // share of the spelling that the register gives
constexpr std::size_t most_spellings = 8;

std::vector<std::string> wordsOf(const std::string& text)
{
    std::vector<std::string> words(1);
    for (const char c : text) {
        if (c == ' ')
            words.emplace_back();
        else
            words.back() += c;
    }
    return words;
}

std::string joined(const std::vector<std::string>& words)
{
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i)
        text.append(i == 0 ? "" : " ").append(words[i]);
    return text;
}

// All words that the list makes equal to this one, itself left out.
std::set<std::string> equalsOf(const std::string& word, const std::vector<Spelling>& spellings)
{
    std::set<std::string> equals = {wordKey(word)};
    for (std::size_t before = 0; before != equals.size();) {
        before = equals.size();
        for (const Spelling& spelling : spellings) {
            const std::string text = wordKey(spelling.text), same = wordKey(spelling.same_as);
            if (equals.count(text) != 0 || equals.count(same) != 0) {
                equals.insert(text);
                equals.insert(same);
            }
        }
    }
    equals.erase(wordKey(word));
    return equals;
}

}  // namespace

std::string wordKey(const std::string& word)
{
    std::string text;
    for (const std::string& character : charactersOf(word))
        text += capitalOf(character);
    if (text.size() > 1 && text.back() == '.')
        text.pop_back();
    return text;
}

std::vector<SpelledText> spellingsOf(const std::string& text,
                                     const std::vector<Spelling>& spellings)
{
    std::vector<SpelledText> all = {{text, 1}};
    const std::vector<std::string> words = wordsOf(text);
    for (std::size_t i = 0; i < words.size(); ++i)
        for (const std::string& equal : equalsOf(words[i], spellings)) {
            if (all.size() >= most_spellings || words[i].empty())
                break;
            std::vector<std::string> exchanged = words;
            exchanged[i] = equal;
            all.push_back({joined(exchanged), 0});
        }
    if (all.size() == 1)
        return all;
    all.front().share = as_registered;
    for (std::size_t i = 1; i < all.size(); ++i)
        all[i].share = (1 - as_registered) / static_cast<double>(all.size() - 1);
    return all;
}

}  // namespace models
