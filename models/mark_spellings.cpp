#include "models/mark_spellings.h"

#include <algorithm>
#include <set>

#include "models/letters.h"

namespace models {

namespace {

constexpr double as_registered = 0.8;  // of each word that has equals: written as in the register
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

// The word itself first.
std::vector<SpelledText> waysToWrite(const std::string& word,
                                     const std::vector<Spelling>& spellings)
{
    std::vector<SpelledText> ways = {{word, 1}};
    if (word.empty())
        return ways;
    const std::set<std::string> equals = equalsOf(word, spellings);
    if (!equals.empty())
        ways.front().share = as_registered;
    for (const std::string& equal : equals)
        ways.push_back({equal, (1 - as_registered) / static_cast<double>(equals.size())});
    return ways;
}

// Each text with each word behind it; the likeliest of them, the first as registered.
std::vector<SpelledText> continued(const std::vector<SpelledText>& texts,
                                   const std::string& between,
                                   const std::vector<SpelledText>& words)
{
    std::vector<SpelledText> longer;
    for (const SpelledText& text : texts)
        for (const SpelledText& word : words)
            longer.push_back({text.text + between + word.text, text.share * word.share});
    std::stable_sort(longer.begin(), longer.end(),
                     [](const auto& a, const auto& b) { return a.share > b.share; });
    if (longer.size() > most_spellings)
        longer.resize(most_spellings);
    return longer;
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
    std::vector<SpelledText> all = {{"", 1}};
    const std::vector<std::string> words = wordsOf(text);
    for (std::size_t i = 0; i < words.size(); ++i)
        all = continued(all, i == 0 ? "" : " ", waysToWrite(words[i], spellings));
    double sum = 0;
    for (const SpelledText& spelling : all)
        sum += spelling.share;
    for (SpelledText& spelling : all)
        spelling.share /= sum;
    return all;
}

}  // namespace models
