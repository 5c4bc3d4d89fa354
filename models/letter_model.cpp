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

bool partsWords(const std::string& letter)
{
    return letter == " " || letter == "." || letter == "&" || letter == "-" || letter == "/";
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
    Shares general(n), plain(n), begun(n);
    double sum = 0;
    for (std::size_t id = 0; id < n; ++id) {
        sum += general[id] = generalShare(ids.letter(id));
        begins_word_behind_.push_back(partsWords(ids.letter(id)));
    }
    for (double& share : general)
        share /= sum;
    for (const std::vector<std::size_t>& text : all)
        for (std::size_t i = 0; i < text.size(); ++i) {
            plain[text[i]] += 1;
            begun[text[i]] += i == 0 ? 1 : 0;
        }
    const Shares any = smoothed(plain, general, general_counts);
    // Initials are drawn from the whole alphabet, whatever the register's happen to be.
    first_ = mixed(smoothed(begun, any, general_counts), general, 0.5);
    countPairs(all, general, any);
}

// What stands behind a letter is smoothed with what stands behind all letters in its place: behind
// any initial a full stop is likely.
void LetterModel::countPairs(const std::vector<std::vector<std::size_t>>& texts,
                             const Shares& general, const Shares& any)
{
    const std::size_t n = general.size();
    std::array<std::vector<Shares>, 2> counts;
    ByPlace pooled;
    for (std::size_t place = 0; place < 2; ++place) {
        counts[place].assign(n, Shares(n));
        pooled[place].assign(n, 0);
    }
    for (const std::vector<std::size_t>& text : texts)
        for (std::size_t i = 1; i < text.size(); ++i) {
            const bool began = i == 1 || begins_word_behind_[text[i - 2]];
            counts[began][text[i - 1]][text[i]] += 1;
            if (!begins_word_behind_[text[i - 1]])
                pooled[began][text[i]] += 1;
        }
    for (std::size_t place = 0; place < 2; ++place)
        for (std::size_t a = 0; a < n; ++a) {
            const Shares& back_off =
                begins_word_behind_[a] ? any : smoothed(pooled[place], any, plain_counts);
            behind_[place].push_back(mixed(smoothed(counts[place][a], back_off, plain_counts),
                                           general, most_certain_next));
        }
}

// The shares of the next letter, each by whether it begins a word.
LetterModel::ByPlace LetterModel::next(const ByPlace& now) const
{
    ByPlace then = {Shares(first_.size()), Shares(first_.size())};
    for (std::size_t place = 0; place < 2; ++place)
        for (std::size_t a = 0; a < first_.size(); ++a) {
            const double share = now[place][a];
            if (share < 1e-6)
                continue;
            Shares& target = then[begins_word_behind_[a]];
            const Shares& shares = behind_[place][a];
            for (std::size_t b = 0; b < shares.size(); ++b)
                target[b] += share * shares[b];
        }
    return then;
}

double LetterModel::odds(const std::vector<CellWeights>& cells, std::size_t first,
                         std::size_t end) const
{
    const ByPlace at_start = {Shares(first_.size()), first_};
    ByPlace now = at_start;
    double odds = 1;
    for (std::size_t i = first; i < end; ++i) {
        const CellWeights& cell = cells[i];
        if (cell.stretch) {  // what stands behind a gap may be anything
            now = {mixed(now[0], first_, 0.5), mixed(now[1], first_, 0.5)};
            for (Shares& shares : now)
                for (double& share : shares)
                    share *= 0.5;
            continue;
        }
        double sum = 0;
        for (Shares& shares : now)
            for (std::size_t a = 0; a < shares.size(); ++a)
                sum += shares[a] *= cell.unread ? 1 : cell.of_letter[a] / cell.other;
        if (sum <= 0)
            return 0;
        odds *= sum;
        for (Shares& shares : now)
            for (double& share : shares)
                share /= sum;
        now = next(now);
    }
    return odds;
}

}  // namespace models
