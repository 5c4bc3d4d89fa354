#include "models/archive/word_match.h"

#include <algorithm>
#include <stdexcept>

#include <QList>
#include <QString>

#include "models/typed_notation.h"

namespace models {

namespace {

constexpr int most_counted = 40;  // a gap of more letters than this is taken for one of any number
constexpr int impossible = -1;

// Letters without case and diacritics: an archive of several hands writes both Mu and Mü.
std::u32string folded(const std::string& text)
{
    // Capitals first: they alone turn one sharp s into two letters.
    const QString plain = QString::fromStdString(text).toUpper().toCaseFolded().normalized(
        QString::NormalizationForm_KD);
    std::u32string letters;
    for (const uint code : plain.toUcs4())
        if (QChar::category(code) != QChar::Mark_NonSpacing)
            letters.push_back(static_cast<char32_t>(code));
    return letters;
}

bool isUnread(const SearchPlace& place)
{
    return place.letters.empty();
}

bool endsWords(const SearchPlace& place)
{
    return isUnread(place) ||
           std::none_of(place.letters.begin(), place.letters.end(),
                        [](char32_t letter) { return QChar::isLetterOrNumber(letter); });
}

bool isSpace(const SearchPlace& place)
{
    return !isUnread(place) && QChar::isSpace(place.letters.front());
}

void addUnread(SearchText& text, int least, std::optional<int> most)
{
    const int counted = std::min(least, most_counted);
    text.insert(text.end(), static_cast<std::size_t>(std::max(counted, 0)), SearchPlace{});
    if (!most || *most - counted > most_counted) {
        text.push_back({.letters = {}, .optional = true, .repeated = true});
        return;
    }
    for (int i = counted; i < *most; ++i)
        text.push_back({.letters = {}, .optional = true, .repeated = false});
}

void addCell(SearchText& text, const Cell& cell)
{
    const bool unread = cell.alternatives.empty() || cell.state == CellState::Lost ||
                        cell.state == CellState::Traces;
    if (unread)
        return addUnread(text, cell.least, cell.most);
    if (cell.alternatives.size() == 1) {
        for (const char32_t letter : folded(cell.alternatives.front().text))
            text.push_back({.letters = {letter}});
        return;
    }
    SearchPlace place;
    for (const Alternative& alternative : cell.alternatives) {
        const std::u32string letters = folded(alternative.text);
        if (!letters.empty())
            place.letters.push_back(letters.front());
    }
    if (!place.letters.empty())
        text.push_back(place);
}

// How many letters agree when word[i..] is laid on text[j..], at best; `impossible` if it does not
// fit. Filled from the ends.
class Laying {
public:
    Laying(const SearchText& text, const SearchText& word, bool whole_word)
        : text_(text),
          word_(word),
          whole_word_(whole_word),
          best_((word.size() + 1) * (text.size() + 1), impossible)
    {
        for (std::size_t i = word.size() + 1; i-- > 0;)
            for (std::size_t j = text.size() + 1; j-- > 0;)
                at(i, j) = bestFrom(i, j);
    }

    int best() const
    {
        int most = impossible;
        for (std::size_t j = 0; j <= text_.size(); ++j)
            if (!whole_word_ || j == 0 || endsWords(text_[j - 1]) ||
                (j < text_.size() && isUnread(text_[j])))
                most = std::max(most, best_[j]);
        return most;
    }

private:
    int& at(std::size_t i, std::size_t j) { return best_[i * (text_.size() + 1) + j]; }

    bool mayEndBefore(std::size_t j) const
    {
        return !whole_word_ || j == text_.size() || endsWords(text_[j]) ||
               (j > 0 && isUnread(text_[j - 1]));
    }

    // 1 when two read places agree, 0 when an unread one lets the other stand, else impossible.
    static int agreement(const SearchPlace& text, const SearchPlace& word)
    {
        if (isUnread(text))
            return 0;
        if (isUnread(word))
            return isSpace(text) ? impossible : 0;
        const bool agree =
            std::any_of(word.letters.begin(), word.letters.end(), [&](char32_t letter) {
                return std::find(text.letters.begin(), text.letters.end(), letter) !=
                       text.letters.end();
            });
        return agree ? 1 : impossible;
    }

    int bestFrom(std::size_t i, std::size_t j)
    {
        int most = impossible;
        if (i == word_.size())
            return mayEndBefore(j) ? 0 : impossible;
        if (word_[i].optional)
            most = std::max(most, at(i + 1, j));
        if (j == text_.size())
            return most;
        if (text_[j].optional)
            most = std::max(most, at(i, j + 1));
        const int gained = agreement(text_[j], word_[i]);
        const std::size_t next_i = word_[i].repeated ? i : i + 1;
        const std::size_t next_j = text_[j].repeated ? j : j + 1;
        if (gained == impossible || (next_i == i && next_j == j))
            return most;
        const int rest = at(next_i, next_j);
        return rest == impossible ? most : std::max(most, rest + gained);
    }

    const SearchText& text_;
    const SearchText& word_;
    bool whole_word_;
    std::vector<int> best_;
};

}  // namespace

SearchText searchText(const Line& line)
{
    SearchText text;
    const SearchPlace gap{.letters = {}, .optional = true, .repeated = true};
    if (line.left_end == LineEnd::CutOff)
        text.push_back(gap);
    for (const Cell& cell : line.cells)
        addCell(text, cell);
    if (line.right_end == LineEnd::CutOff)
        text.push_back(gap);
    return text;
}

SearchText searchText(const std::string& text)
{
    SearchText places;
    for (const char32_t letter : folded(text))
        places.push_back({.letters = {letter}});
    return places;
}

std::vector<SearchText> searchWords(const std::string& query)
{
    const ParsedNotation parsed = parseTyped(query);
    if (parsed.fault)
        throw std::invalid_argument(parsed.fault->message());
    std::vector<SearchText> words;
    for (const Line& line : parsed.lines) {
        SearchText word;
        for (const Cell& cell : line.cells) {
            SearchText places;
            addCell(places, cell);
            if (places.size() == 1 && isSpace(places.front())) {
                words.push_back(std::move(word));
                word.clear();
            } else {
                word.insert(word.end(), places.begin(), places.end());
            }
        }
        words.push_back(std::move(word));
    }
    std::erase_if(words, [](const SearchText& word) { return word.empty(); });
    return words;
}

bool holdsWord(const SearchText& text, const SearchText& word)
{
    const auto letters = std::count_if(word.begin(), word.end(),
                                       [](const SearchPlace& place) { return !isUnread(place); });
    const bool has_unread = static_cast<std::size_t>(letters) < word.size();
    return Laying(text, word, has_unread).best() >= (letters + 1) / 2;
}

}  // namespace models
