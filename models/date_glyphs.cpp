#include "models/date_glyphs.h"

#include <algorithm>
#include <cctype>
#include <string_view>

namespace models {

namespace {

constexpr std::string_view date_letters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ/.-' ";
constexpr int most_counted = 4;        // characters that an uncertain stretch hides in a date
constexpr std::size_t most_ways = 25;  // of counting a line's stretches

// The digit that a letter is often set or read for; -1 for none.
int digitOf(const std::string& letter)
{
    if (letter.size() != 1)
        return -1;
    const char c = letter[0];
    if (c >= '0' && c <= '9')
        return c - '0';
    constexpr std::string_view letters = "OoQDIl|ZSGbBgq", digits = "00001112566899";
    const std::size_t at = letters.find(c);
    return at == std::string_view::npos ? -1 : digits[at] - '0';
}

bool isPlainDigit(const std::string& letter)
{
    return letter.size() == 1 && letter[0] >= '0' && letter[0] <= '9';
}

// By cell, the layer that does not show it: of cells that were erased, beside others struck over
// them. Empty when there are none.
std::vector<std::optional<TextLayer>> hiddenLayers(const std::vector<Cell>& cells)
{
    std::vector<std::optional<TextLayer>> hidden;
    const auto is_changed = [&](std::size_t i) {
        return i < cells.size() && (cells[i].erased || cells[i].struck_over);
    };
    for (std::size_t i = 0; i < cells.size(); ++i) {
        std::size_t end = i;
        bool is_erased = false, is_over = false;
        for (; is_changed(end); ++end) {
            is_over = is_over || cells[end].struck_over;
            is_erased = is_erased || !cells[end].struck_over;
        }
        if (is_erased && is_over)
            hidden.resize(cells.size());
        for (; i < end; ++i)
            if (is_erased && is_over)
                hidden[i] = cells[i].struck_over ? TextLayer::Earlier : TextLayer::Later;
    }
    return hidden;
}

// How many characters a cell may stand for, least first.
std::vector<int> counts(const CellWeights& weights)
{
    const int least = weights.least;
    const int most = std::max(least, std::min(weights.most.value_or(most_counted), most_counted));
    std::vector<int> all;
    for (int count = least; count <= most; ++count)
        all.push_back(count);
    return all;
}

}  // namespace

double bestDigitOdds(const std::vector<DateGlyph>& glyphs, std::size_t at, std::size_t count)
{
    if (at + count > glyphs.size())
        return 0;
    double odds = 1;
    for (std::size_t i = at; i < at + count; ++i) {
        if (glyphs[i].digits.empty())
            return 0;
        odds *= *std::max_element(glyphs[i].digit_odds.begin(), glyphs[i].digit_odds.end());
    }
    return odds;
}

bool isDateText(std::string_view text)
{
    return text.find_first_not_of(date_letters) == std::string_view::npos;
}

DateLine::DateLine(const Line& line) : line_(line), hidden_(hiddenLayers(line.cells))
{
    for (const char c : date_letters)
        id_of_char_[static_cast<std::size_t>(c)] = ids_.idOf(std::string(1, c));
    weights_ = weighCells(line.cells, ids_, ReadingErrors{});
}

double DateLine::odds(const DateGlyph& glyph, char letter) const
{
    if (glyph.unread)
        return 1;
    const CellWeights& weights = weights_[glyph.cell];
    return weights.of_letter[id_of_char_[static_cast<std::size_t>(letter)]] / weights.other;
}

double DateLine::odds(const std::vector<DateGlyph>& glyphs, std::size_t at,
                      std::string_view text) const
{
    if (at + text.size() > glyphs.size())
        return 0;
    double product = 1;
    for (std::size_t i = 0; i < text.size(); ++i)
        product *= odds(glyphs[at + i], text[i]);
    return product;
}

bool DateLine::isLetter(const DateGlyph& glyph) const
{
    if (glyph.unread)
        return false;
    const std::string& text = line_.cells[glyph.cell].alternatives.front().text;
    return text.size() == 1 && std::isalpha(static_cast<unsigned char>(text[0])) != 0;
}

bool DateLine::canBe(const DateGlyph& glyph, char letter) const
{
    if (glyph.unread)
        return true;
    const Cell& cell = line_.cells[glyph.cell];
    const std::size_t named = cell.state == CellState::Doubtful ? cell.alternatives.size() : 1;
    return std::any_of(cell.alternatives.begin(),
                       cell.alternatives.begin() + static_cast<std::ptrdiff_t>(named),
                       [&](const Alternative& one) { return one.text == std::string(1, letter); });
}

bool DateLine::isHidden(std::size_t cell, TextLayer layer) const
{
    return !hidden_.empty() && hidden_[cell] == layer;
}

DateGlyph DateLine::glyphOf(std::size_t cell_index) const
{
    const Cell& cell = line_.cells[cell_index];
    DateGlyph glyph;
    glyph.cell = cell_index;
    glyph.unread = weights_[cell_index].unread;
    glyph.doubtful = cell.state == CellState::Doubtful && cell.alternatives.size() == 1;
    for (int digit = 0; digit < 10; ++digit) {
        glyph.digit_odds[static_cast<std::size_t>(digit)] =
            odds(glyph, static_cast<char>('0' + digit));
        if (glyph.unread)
            glyph.digits.push_back(digit);
    }
    if (glyph.unread)
        return glyph;
    glyph.is_digit = isPlainDigit(cell.alternatives.front().text);
    const std::size_t named = cell.state == CellState::Doubtful ? cell.alternatives.size() : 1;
    for (std::size_t i = 0; i < named; ++i) {
        const int digit = digitOf(cell.alternatives[i].text);
        if (digit >= 0 &&
            std::find(glyph.digits.begin(), glyph.digits.end(), digit) == glyph.digits.end())
            glyph.digits.push_back(digit);
    }
    std::sort(glyph.digits.begin(), glyph.digits.end());
    return glyph;
}

std::vector<std::vector<DateGlyph>> DateLine::waysToCount(TextLayer layer) const
{
    std::vector<std::vector<DateGlyph>> ways(1);
    for (std::size_t i = 0; i < weights_.size(); ++i) {
        if (isHidden(i, layer))
            continue;
        std::vector<int> all = counts(weights_[i]);
        if (ways.size() * all.size() > most_ways)
            all.resize(1);
        std::vector<std::vector<DateGlyph>> longer;
        for (const auto& way : ways)
            for (const int count : all) {
                longer.push_back(way);
                longer.back().insert(longer.back().end(),
                                     static_cast<std::size_t>(std::min(count, 20)), glyphOf(i));
            }
        ways = std::move(longer);
    }
    return ways;
}

}  // namespace models
