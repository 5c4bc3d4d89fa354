#include "models/date_glyphs.h"

#include <algorithm>
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

DateLine::DateLine(const Line& line) : line_(line)
{
    for (const char c : date_letters)
        id_of_char_[static_cast<std::size_t>(c)] = ids_.idOf(std::string(1, c));
    weights_ = weighCells(line.cells, ids_, ConfusionTable::published());
}

double DateLine::odds(const DateGlyph& glyph, char letter) const
{
    if (glyph.unread)
        return 1;
    const CellWeights& weights = weights_[glyph.cell];
    return weights.of_letter[id_of_char_[static_cast<std::size_t>(letter)]] / weights.other;
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

std::vector<std::vector<DateGlyph>> DateLine::waysToCount() const
{
    std::vector<std::vector<DateGlyph>> ways(1);
    for (std::size_t i = 0; i < weights_.size(); ++i) {
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
