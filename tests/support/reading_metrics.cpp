#include "tests/support/reading_metrics.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace metrics {

namespace {

// One code point from `at` on, which is moved past it; nullopt for a byte that begins none.
std::optional<char32_t> nextCodePoint(const std::string& text, std::size_t& at)
{
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char lead = byte(at++);
    if (lead < 0x80)
        return lead;
    const std::size_t more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : lead >= 0xC2 ? 1 : 0;
    if (more == 0 || lead > 0xF4 || at + more > text.size())
        return std::nullopt;
    char32_t value = static_cast<char32_t>(lead & (0x3F >> more));
    for (std::size_t i = 0; i < more; ++i) {
        if ((byte(at + i) & 0xC0) != 0x80)
            return std::nullopt;
        value = (value << 6) | (byte(at + i) & 0x3FU);
    }
    at += more;
    return value;
}

// Upper case of a letter or digit, nullopt for anything else.
std::optional<char32_t> folded(char32_t c)
{
    if (c >= U'a' && c <= U'z')
        return c - U'a' + U'A';
    if ((c >= U'A' && c <= U'Z') || (c >= U'0' && c <= U'9'))
        return c;
    if (c == 0xD7 || c == 0xF7)  // the signs of multiplication and division
        return std::nullopt;
    if (c >= 0xE0 && c <= 0xFE)
        return c - 0x20;
    if (c >= 0xC0 && c <= 0x24F)
        return c;
    return std::nullopt;
}

// table[i][j]: distance of the first i characters read from the first j of the truth.
std::vector<std::vector<std::size_t>> distances(std::u32string_view read, std::u32string_view truth)
{
    std::vector<std::vector<std::size_t>> table(read.size() + 1,
                                                std::vector<std::size_t>(truth.size() + 1));
    for (std::size_t i = 0; i <= read.size(); ++i)
        for (std::size_t j = 0; j <= truth.size(); ++j) {
            if (i == 0 || j == 0)
                table[i][j] = i + j;
            else
                table[i][j] =
                    std::min({table[i - 1][j] + 1, table[i][j - 1] + 1,
                              table[i - 1][j - 1] + (read[i - 1] == truth[j - 1] ? 0 : 1)});
        }
    return table;
}

double asNumber(std::size_t count)
{
    return static_cast<double>(count);
}

std::size_t rightOf(const std::vector<Judged>& judged)
{
    return static_cast<std::size_t>(
        std::count_if(judged.begin(), judged.end(), [](const Judged& j) { return j.right; }));
}

// Sorted by certainty, each with the share right among those of the same certainty.
std::vector<double> sharesRight(std::vector<Judged>& judged)
{
    std::sort(judged.begin(), judged.end(),
              [](const Judged& a, const Judged& b) { return a.certainty < b.certainty; });
    std::vector<double> shares;
    for (std::size_t i = 0; i < judged.size();) {
        std::size_t end = i, right = 0;
        for (; end < judged.size() && judged[end].certainty == judged[i].certainty; ++end)
            right += judged[end].right ? 1 : 0;
        shares.resize(end, asNumber(right) / asNumber(end - i));
        i = end;
    }
    return shares;
}

}  // namespace

std::u32string lettersAndDigits(const std::string& text)
{
    std::u32string result;
    for (std::size_t at = 0; at < text.size();)
        if (const auto code = nextCodePoint(text, at))
            if (const auto letter = folded(*code))
                result += *letter;
    return result;
}

std::size_t editDistance(std::u32string_view read, std::u32string_view truth)
{
    return distances(read, truth)[read.size()][truth.size()];
}

std::vector<std::optional<std::size_t>> partnersOf(std::u32string_view read,
                                                   std::u32string_view truth)
{
    const auto table = distances(read, truth);
    std::vector<std::optional<std::size_t>> partners(read.size());
    std::size_t i = read.size(), j = truth.size();
    while (i > 0 && j > 0) {
        const std::size_t step = read[i - 1] == truth[j - 1] ? 0 : 1;
        if (table[i][j] == table[i - 1][j - 1] + step) {
            partners[--i] = --j;
        } else if (table[i][j] == table[i - 1][j] + 1) {
            --i;
        } else {
            --j;
        }
    }
    return partners;
}

CharacterErrors& CharacterErrors::operator+=(const CharacterErrors& other)
{
    edits += other.edits;
    reference += other.reference;
    return *this;
}

std::optional<double> CharacterErrors::rate() const
{
    if (reference == 0)
        return std::nullopt;
    return asNumber(edits) / asNumber(reference);
}

CharacterErrors characterErrors(std::u32string_view read, std::u32string_view truth)
{
    return {editDistance(read, truth), truth.size()};
}

std::optional<double> brierScore(const std::vector<Judged>& judged)
{
    if (judged.empty())
        return std::nullopt;
    double sum = 0;
    for (const Judged& j : judged)
        sum += std::pow(j.certainty - (j.right ? 1 : 0), 2);
    return sum / asNumber(judged.size());
}

std::optional<double> calibrationError(std::vector<Judged> judged, int bins)
{
    if (bins < 1)
        throw std::invalid_argument("calibrationError: bins must be at least 1");
    if (judged.empty())
        return std::nullopt;
    const std::vector<double> shares = sharesRight(judged);
    const std::size_t n = judged.size(), count = std::min(n, static_cast<std::size_t>(bins));
    double error = 0;
    std::size_t i = 0;
    for (std::size_t bin = 0; bin < count; ++bin) {
        double gap = 0;
        for (; i < n && i * count / n == bin; ++i)
            gap += shares[i] - judged[i].certainty;
        error += std::abs(gap);
    }
    return error / asNumber(n);
}

std::optional<double> coverageAtPrecision(std::vector<Judged> judged, std::size_t wanted,
                                          double precision)
{
    if (wanted == 0)
        return std::nullopt;
    std::sort(judged.begin(), judged.end(),
              [](const Judged& a, const Judged& b) { return a.certainty > b.certainty; });
    std::size_t right = 0, covered = 0;
    for (std::size_t i = 0; i < judged.size(); ++i) {
        right += judged[i].right ? 1 : 0;
        const bool tied = i + 1 < judged.size() && judged[i + 1].certainty == judged[i].certainty;
        if (!tied && asNumber(right) >= precision * asNumber(i + 1))
            covered = right;
    }
    return asNumber(covered) / asNumber(wanted);
}

std::optional<double> wrongButSurePer100(const std::vector<Judged>& judged)
{
    if (judged.empty())
        return std::nullopt;
    const auto wrong = std::count_if(judged.begin(), judged.end(), [](const Judged& j) {
        return !j.right && j.certainty >= sure;
    });
    return 100.0 * static_cast<double>(wrong) / asNumber(judged.size());
}

std::optional<double> rightThatAreSure(const std::vector<Judged>& judged)
{
    const std::size_t right = rightOf(judged);
    if (right == 0)
        return std::nullopt;
    const auto sure_ones = std::count_if(judged.begin(), judged.end(), [](const Judged& j) {
        return j.right && j.certainty >= sure;
    });
    return static_cast<double>(sure_ones) / asNumber(right);
}

std::optional<double> topShare(const std::vector<int>& ranks, int k)
{
    if (ranks.empty())
        return std::nullopt;
    const auto among =
        std::count_if(ranks.begin(), ranks.end(), [&](int rank) { return rank >= 1 && rank <= k; });
    return static_cast<double>(among) / asNumber(ranks.size());
}

}  // namespace metrics
