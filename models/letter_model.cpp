#include "models/letter_model.h"

#include <array>
#include <string_view>

#include "models/chain_row.h"
#include "models/letters.h"

namespace models {

namespace {

constexpr std::string_view common_letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 .&-/'\uFFFD";
// Counts that the register's own must outweigh: of a letter at all, and behind another.
constexpr double general_counts = 60, plain_counts = 6;
// A new maker may write otherwise than all before it: the less likely, the more there were.
constexpr double otherwise_counts = 5;
// Of letters of a maker that nobody knows, those that no mark so far has: of another script, signs.
constexpr double strange_share = 0.03;
constexpr double general_end = 0.06;  // that a mark ends behind a letter: of sixteen on average
// Makers that must share a row of letters for what follows it to count.
constexpr double least_makers = 1.5;

// How firms of initials sign, whoever they are: a register that holds few of a kind must not take a
// new firm's for the one it knows. Common practice, no source; the initials are the alphabet's.
constexpr std::array<std::string_view, 13> common_forms = {
    "A.B. & CO LTD", "C.D. & CO LTD", "E.F. & CO. LTD.", "G.H. & CO. LTD.", "I.J. LTD",
    "K.L. LTD",      "M.N. & SONS",   "O.P. & SONS LTD", "Q.R. & SONS LTD", "S.T. BROS",
    "U.V. BROS LTD", "W.X. & CO",     "Y.Z. & CO"};

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

bool isCapital(const std::string& letter)
{
    return letter.size() == 1 && letter[0] >= 'A' && letter[0] <= 'Z';
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

double skipOf(const std::string& letter, double skip_rate)
{
    LetterIds ids;
    return makeMatchText(letter, ids, skip_rate).skip.front();
}

std::vector<double> scaledTo(std::vector<double> shares, double sum)
{
    double before = 0;
    for (const double share : shares)
        before += share;
    for (double& share : shares)
        share *= sum / before;
    return shares;
}

}  // namespace

LetterModel::LetterModel(const std::vector<SampleText>& samples, LetterIds& ids, double skip_rate)
    : chain_(1, {}, [](const LetterContext&) { return Shares{1}; })
{
    for (const std::string& letter : charactersOf(std::string(common_letters)))
        ids.idOf(letter);
    std::vector<std::vector<std::size_t>> texts;
    std::vector<double> weights;
    double marks = 0;
    for (const SampleText& sample : samples) {
        texts.push_back(ids.idsOf(sample.text));
        weights.push_back(sample.weight);
        marks += sample.weight;
    }
    otherwise_ = otherwise_counts / (otherwise_counts + marks);
    for (const std::string_view form : common_forms) {
        texts.push_back(ids.idsOf(std::string(form)));
        weights.push_back(1);
    }
    for (std::vector<std::size_t>& text : texts)
        text.push_back(ids.size());
    for (std::size_t id = 0; id < ids.size(); ++id) {
        general_.push_back(generalShare(ids.letter(id)));
        begins_word_behind_.push_back(partsWords(ids.letter(id)));
        is_letter_.push_back(isCapital(ids.letter(id)));
        skip_.push_back(skipOf(ids.letter(id), skip_rate));
    }
    general_ = scaledTo(std::move(general_), 1 - general_end);
    general_.push_back(general_end);
    countPairs(texts, weights);
    LetterContexts contexts;
    for (std::size_t t = 0; t < texts.size(); ++t)
        contexts.add(texts[t], weights[t]);
    strange_ = ids.idOf(unknown_letter);
    chain_ = LetterChain(general_.size(), contexts.seen(least_makers),
                         [&](const LetterContext& context) { return next(context, contexts); });
}

// What stands behind a letter is smoothed with what stands behind all letters in its place: behind
// any initial a full stop is likely.
void LetterModel::countPairs(const std::vector<std::vector<std::size_t>>& texts,
                             const std::vector<double>& weights)
{
    const std::size_t n = general_.size();
    Shares plain(n), begun(n);
    std::array<std::vector<Shares>, 2> counts;
    std::array<Shares, 2> pooled;
    for (std::size_t place = 0; place < 2; ++place) {
        counts[place].assign(n, Shares(n));
        pooled[place].assign(n, 0);
    }
    for (std::size_t t = 0; t < texts.size(); ++t)
        for (std::size_t i = 0; i < texts[t].size(); ++i) {
            const std::size_t letter = texts[t][i];
            plain[letter] += weights[t];
            if (i == 0) {
                begun[letter] += weights[t];
                continue;
            }
            const std::size_t before = texts[t][i - 1];
            const bool began = i == 1 || begins_word_behind_[texts[t][i - 2]];
            counts[began][before][letter] += weights[t];
            if (!begins_word_behind_[before])
                pooled[began][letter] += weights[t];
        }
    any_ = smoothed(plain, general_, general_counts);
    first_ = withAnyInitial(smoothed(begun, any_, general_counts));
    first_.back() = 0;
    first_ = scaledTo(std::move(first_), 1);
    for (std::size_t place = 0; place < 2; ++place)
        for (std::size_t a = 0; a < end(); ++a) {
            const Shares base =
                begins_word_behind_[a] ? any_ : smoothed(pooled[place], any_, plain_counts);
            Shares shares = smoothed(counts[place][a], base, plain_counts);
            behind_[place].push_back(begins_word_behind_[a] ? withAnyInitial(std::move(shares))
                                                            : std::move(shares));
        }
}

// Initials are drawn from the whole alphabet, whatever the register's happen to be.
LetterModel::Shares LetterModel::withAnyInitial(Shares shares) const
{
    double letters = 0, of_general = 0;
    for (std::size_t id = 0; id < end(); ++id)
        if (is_letter_[id]) {
            letters += shares[id];
            of_general += general_[id];
        }
    for (std::size_t id = 0; id < end(); ++id)
        if (is_letter_[id])
            shares[id] = 0.5 * (shares[id] + letters * general_[id] / of_general);
    return shares;
}

LetterModel::Shares LetterModel::next(const LetterContext& context,
                                      const LetterContexts& contexts) const
{
    if (context.size() == 0)
        return any_;
    const std::size_t before = context.back(0);
    Shares shares = first_, general = first_;
    if (before < end()) {
        const bool began = context.size() > 1 &&
                           (context.back(1) >= end() || begins_word_behind_[context.back(1)]);
        shares = behind_[began][before];
        general = general_;
    }
    contexts.drawTowards(context, shares);
    shares = mixed(general, shares, otherwise_);
    for (double& share : shares)
        share *= 1 - strange_share;
    shares[strange_] += strange_share;
    return shares;
}

double LetterModel::logSum(const std::vector<AlignedCell>& cells, const AlignmentPlan& plan,
                           const GapRates& rates) const
{
    return ChainRow(chain_, skip_, rates).logSum(cells, plan);
}

std::vector<std::vector<double>> LetterModel::lettersOf(const std::vector<AlignedCell>& cells,
                                                        const AlignmentPlan& plan,
                                                        const GapRates& rates) const
{
    return ChainRow(chain_, skip_, rates).lettersOf(cells, plan);
}

}  // namespace models
