#include "models/letter_model.h"

#include <string_view>

#include "models/letters.h"

namespace models {

namespace {

constexpr std::string_view common_letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 .&-/'";
// Counts that the register's own must outweigh: of a letter at all, and behind another.
constexpr double general_counts = 60, plain_counts = 6;
constexpr double most_certain_next = 0.75;  // a new maker may always write otherwise

// How often a character stands in the marks of firms at large; initials make rare letters less
// rare than in running text. Common practice, no source.
double generalShare(const std::string& letter)
{
    if (letter.size() != 1)
        return 0.0002;
    const char c = letter[0];
    if (c == ' ')
        return 0.1;
    if (c == '.')
        return 0.08;
    if (c == '&')
        return 0.03;
    if (c >= '0' && c <= '9')
        return 0.003;
    if (c >= 'A' && c <= 'Z') {
        constexpr std::string_view often = "ENRSLOCATID", seldom = "JKQUVXYZ";
        if (often.find(c) != std::string_view::npos)
            return 0.042;
        return seldom.find(c) != std::string_view::npos ? 0.015 : 0.023;
    }
    return 0.0005;
}

using Counts = std::vector<double>;

// Shares of the counts, with `general` as if seen `weight` times.
std::vector<double> smoothed(const Counts& counts, const std::vector<double>& general,
                             double weight)
{
    double sum = 0;
    for (const double count : counts)
        sum += count;
    std::vector<double> shares(counts.size());
    for (std::size_t i = 0; i < counts.size(); ++i)
        shares[i] = (counts[i] + weight * general[i]) / (sum + weight);
    return shares;
}

std::vector<double> mixed(const std::vector<double>& a, const std::vector<double>& b, double share)
{
    std::vector<double> both(a.size());
    for (std::size_t i = 0; i < a.size(); ++i)
        both[i] = share * a[i] + (1 - share) * b[i];
    return both;
}

}  // namespace

LetterModel::LetterModel(const std::vector<std::string>& texts, LetterIds& ids)
{
    for (const std::string& letter : charactersOf(std::string(common_letters)))
        ids.idOf(letter);
    std::vector<std::vector<std::size_t>> all;
    for (const std::string& text : texts)
        all.push_back(ids.idsOf(text));
    const std::size_t n = ids.size();
    std::vector<double> general(n);
    double sum = 0;
    for (std::size_t id = 0; id < n; ++id)
        sum += general[id] = generalShare(ids.letter(id));
    for (double& share : general)
        share /= sum;
    Counts plain(n), begun(n);
    std::vector<Counts> pairs(n, Counts(n));
    for (const std::vector<std::size_t>& text : all)
        for (std::size_t i = 0; i < text.size(); ++i) {
            plain[text[i]] += 1;
            (i == 0 ? begun : pairs[text[i - 1]])[text[i]] += 1;
        }
    const std::vector<double> any = smoothed(plain, general, general_counts);
    // Initials are drawn from the whole alphabet, whatever the register's happen to be.
    first_ = mixed(smoothed(begun, any, general_counts), general, 0.5);
    for (const Counts& behind : pairs)
        next_.push_back(mixed(smoothed(behind, any, plain_counts), general, most_certain_next));
}

double LetterModel::odds(const std::vector<CellWeights>& cells, std::size_t first,
                         std::size_t end) const
{
    const std::size_t n = first_.size();
    std::vector<double> now = first_, then(n);  // the next letter's shares before it is seen
    double odds = 1;
    for (std::size_t i = first; i < end; ++i) {
        const CellWeights& cell = cells[i];
        if (cell.stretch) {
            now = mixed(now, first_, 0.5);  // what stands behind a gap may be anything
            continue;
        }
        double sum = 0;
        for (std::size_t a = 0; a < n; ++a)
            sum += now[a] *= cell.unread ? 1 : cell.of_letter[a] / cell.other;
        if (sum <= 0)
            return 0;
        odds *= sum;
        then.assign(n, 0);
        for (std::size_t a = 0; a < n; ++a) {
            const double share = now[a] / sum;
            if (share < 1e-6)
                continue;
            for (std::size_t b = 0; b < n; ++b)
                then[b] += share * next_[a][b];
        }
        std::swap(now, then);
    }
    return odds;
}

}  // namespace models
