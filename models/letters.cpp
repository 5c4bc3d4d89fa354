#include "models/letters.h"

#include "models/letter_table.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

namespace models {

namespace {

constexpr char32_t replacement_sign = 0xFFFD;

struct Decoded {
    char32_t code_point = replacement_sign;
    std::size_t bytes = 1;
    bool good = false;
};

// Number of bytes that a first byte announces; 0 when it cannot be a first byte.
std::size_t announcedLength(unsigned char first)
{
    if (first < 0x80)
        return 1;
    if (first >= 0xC2 && first <= 0xDF)
        return 2;
    if (first >= 0xE0 && first <= 0xEF)
        return 3;
    if (first >= 0xF0 && first <= 0xF4)
        return 4;
    return 0;
}

Decoded decodeAt(const std::string& text, std::size_t at)
{
    const auto first = static_cast<unsigned char>(text[at]);
    const std::size_t length = announcedLength(first);
    if (length == 0 || at + length > text.size())
        return {};
    if (length == 1)
        return {first, 1, true};
    char32_t value = first & (0xFFU >> (length + 1));
    for (std::size_t i = 1; i < length; ++i) {
        const auto next = static_cast<unsigned char>(text[at + i]);
        if ((next & 0xC0U) != 0x80U)
            return {};
        value = (value << 6U) | (next & 0x3FU);
    }
    constexpr std::array<char32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
    const bool surrogate = value >= 0xD800 && value <= 0xDFFF;
    if (value < least[length] || value > 0x10FFFF || surrogate)
        return {};
    return {value, length, true};
}

std::string encode(char32_t c)
{
    std::string text;
    const auto put = [&text](char32_t byte) { text += static_cast<char>(byte); };
    if (c < 0x80) {
        put(c);
    } else if (c < 0x800) {
        put(0xC0U | (c >> 6U));
        put(0x80U | (c & 0x3FU));
    } else if (c < 0x10000) {
        put(0xE0U | (c >> 12U));
        put(0x80U | ((c >> 6U) & 0x3FU));
        put(0x80U | (c & 0x3FU));
    } else {
        put(0xF0U | (c >> 18U));
        put(0x80U | ((c >> 12U) & 0x3FU));
        put(0x80U | ((c >> 6U) & 0x3FU));
        put(0x80U | (c & 0x3FU));
    }
    return text;
}

std::u32string codePointsOf(const std::string& text)
{
    std::u32string points;
    for (std::size_t at = 0; at < text.size();) {
        const Decoded decoded = decodeAt(text, at);
        points += decoded.code_point;
        at += decoded.bytes;
    }
    return points;
}

void decomposeInto(char32_t c, std::u32string& points)
{
    const auto made_of_c = [c](const Composition& row) { return row.composed == c; };
    for (const auto& table : {std::pair{std::begin(compositions), std::end(compositions)},
                              std::pair{std::begin(dotted_below), std::end(dotted_below)}}) {
        const auto* row = std::find_if(table.first, table.second, made_of_c);
        if (row != table.second) {
            decomposeInto(row->base, points);
            points += row->mark;
            return;
        }
    }
    points += c;
}

bool isMark(char32_t c)
{
    return (c >= 0x0300 && c <= 0x036F) || (c >= 0x1AB0 && c <= 0x1AFF) ||
           (c >= 0x1DC0 && c <= 0x1DFF) || (c >= 0x20D0 && c <= 0x20FF) ||
           (c >= 0xFE00 && c <= 0xFE0F) || (c >= 0xFE20 && c <= 0xFE2F);
}

// Unicode's canonical combining class, as far as the accents of Latin letters go.
int combiningClass(char32_t mark)
{
    if (mark == 0x0327 || mark == 0x0328)
        return 202;
    if (mark == 0x031B)
        return 216;
    const bool below = (mark >= 0x0316 && mark <= 0x0319) || (mark >= 0x031C && mark <= 0x0320) ||
                       (mark >= 0x0323 && mark <= 0x0326) || (mark >= 0x0329 && mark <= 0x0333);
    return below ? 220 : 230;
}

std::optional<char32_t> composed(char32_t base, char32_t mark)
{
    for (const Composition& row : compositions)
        if (row.base == base && row.mark == mark)
            return row.composed;
    return std::nullopt;
}

// Joins marks to the first code point where one code point holds both and no mark of the same class
// stands between.
std::u32string compose(const std::u32string& points)
{
    std::u32string joined(1, points.front());
    int last_class = 0;
    for (std::size_t i = 1; i < points.size(); ++i) {
        const int own_class = combiningClass(points[i]);
        const auto both = own_class == last_class ? std::nullopt : composed(joined[0], points[i]);
        if (both) {
            joined[0] = *both;
        } else {
            joined += points[i];
            last_class = own_class;
        }
    }
    return joined;
}

}  // namespace

std::optional<std::size_t> firstBadByte(const std::string& text)
{
    for (std::size_t at = 0; at < text.size();) {
        const Decoded decoded = decodeAt(text, at);
        if (!decoded.good)
            return at;
        at += decoded.bytes;
    }
    return std::nullopt;
}

std::vector<std::string> charactersOf(const std::string& text)
{
    std::vector<std::string> characters;
    characters.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        const Decoded decoded = decodeAt(text, at);
        const bool line_feed_behind =
            decoded.code_point == U'\n' && !characters.empty() && characters.back() == "\r";
        const bool control_before =
            !characters.empty() && static_cast<unsigned char>(characters.back()[0]) < 0x20;
        const bool mark = isMark(decoded.code_point) && !control_before;
        if (!characters.empty() && (line_feed_behind || mark))
            characters.back() += encode(decoded.code_point);
        else
            characters.push_back(encode(decoded.code_point));
        at += decoded.bytes;
    }
    return characters;
}

bool isCombiningMark(const std::string& character)
{
    return !character.empty() && isMark(decodeAt(character, 0).code_point);
}

std::string normalForm(const std::string& character)
{
    if (character.size() < 2)
        return character;
    std::u32string points;
    for (const char32_t c : codePointsOf(character))
        decomposeInto(c, points);
    if (points.size() > 1 && std::all_of(points.begin() + 1, points.end(), isMark)) {
        std::stable_sort(points.begin() + 1, points.end(), [](char32_t a, char32_t b) {
            return combiningClass(a) < combiningClass(b);
        });
        points = compose(points);
    }
    std::string text;
    for (const char32_t c : points)
        text += encode(c);
    return text;
}

std::string capitalOf(const std::string& character)
{
    if (character.size() == 1 && static_cast<unsigned char>(character[0]) < 0x80) {
        const char c = character[0];
        return std::string(1, c >= 'a' && c <= 'z' ? static_cast<char>(c - 0x20) : c);
    }
    std::u32string points = codePointsOf(character);
    if (points.empty())
        return character;
    char32_t& c = points[0];
    const bool even_pairs = (c >= 0x0100 && c <= 0x0137) || (c >= 0x014A && c <= 0x0177);
    const bool odd_pairs = (c >= 0x0139 && c <= 0x0148) || (c >= 0x0179 && c <= 0x017E);
    if (c == 0xFF)
        c = 0x0178;
    else if ((c >= U'a' && c <= U'z') || (c >= 0xE0 && c <= 0xFE && c != 0xF7))
        c -= 0x20;
    else if ((even_pairs && c % 2 == 1 && c != 0x0131) || (odd_pairs && c % 2 == 0))
        c -= 1;
    std::string text;
    for (const char32_t point : points)
        text += encode(point);
    return text;
}

bool sameButCase(const std::string& a, const std::string& b)
{
    if (a == b)
        return true;
    const auto isAscii = [](const std::string& text) {
        return text.size() == 1 && static_cast<unsigned char>(text[0]) < 0x80;
    };
    if (!isAscii(a) && !isAscii(b))
        return capitalOf(a) == capitalOf(b);
    const auto isLetter = [](char c) { return c >= 'a' && c <= 'z'; };
    return isAscii(a) && isAscii(b) && (a[0] ^ b[0]) == 0x20 &&
           isLetter(static_cast<char>(a[0] | 0x20));
}

std::string plainKey(const std::string& text)
{
    std::string key;
    for (const std::string& character : charactersOf(text))
        if (character != " ")
            key += capitalOf(normalForm(character));
    return key;
}

}  // namespace models
