#include "models/dating.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>
#include <stdexcept>

#include "models/dating_words.h"
#include "models/edtf_set.h"

namespace models {

namespace {

using ByYear = std::vector<double>;

constexpr double prior_slack = 1e-6;
constexpr double says_something = 0.1;  // bits

void checkDatingOptions(const DatingOptions& options)
{
    if (!(options.set_share > 0 && options.set_share < 1))
        throw std::invalid_argument("DatingOptions.set_share must be above 0 and below 1");
    if (!(options.alarm_from > 0 && options.alarm_from < 1))
        throw std::invalid_argument("DatingOptions.alarm_from must be above 0 and below 1");
    if (!(options.least_culprit >= 0 && options.least_culprit < 1))
        throw std::invalid_argument("DatingOptions.least_culprit must be 0 or more and below 1");
}

void checkPiece(const DateEvidence& piece, std::size_t years)
{
    const std::string who = "the evidence '" + piece.source + "'";
    if (piece.cases.empty() || piece.cases.front().fault)
        throw std::invalid_argument(who + " must have a sound case first");
    double priors = 0;
    for (const EvidenceCase& one : piece.cases) {
        priors += one.prior;
        if (one.prior < 0 || one.likelihood.size() != years)
            throw std::invalid_argument(who + " must have a likelihood for each year of the range");
        if (std::any_of(one.likelihood.begin(), one.likelihood.end(),
                        [](double value) { return !(value >= 0 && std::isfinite(value)); }))
            throw std::invalid_argument(who + " has a likelihood that is none");
    }
    if (std::abs(priors - 1) > prior_slack)
        throw std::invalid_argument(who + " must have priors that sum to 1");
}

ByYear normalisedYears(ByYear years)
{
    const double sum = std::accumulate(years.begin(), years.end(), 0.0);
    if (!(sum > 0))
        throw std::invalid_argument("the evidence leaves no year of the range possible");
    for (double& year : years)
        year /= sum;
    return years;
}

// The product of all factors but one; dividing would lose what a zero hides. Scaled on the way, so
// that many pieces do not run out of numbers.
ByYear productBut(const std::vector<ByYear>& factors, std::size_t left_out, std::size_t years)
{
    ByYear product(years, 1.0);
    for (std::size_t i = 0; i < factors.size(); ++i) {
        if (i == left_out)
            continue;
        double highest = 0;
        for (std::size_t y = 0; y < years; ++y) {
            product[y] *= factors[i][y];
            highest = std::max(highest, product[y]);
        }
        if (highest > 0)
            for (double& value : product)
                value /= highest;
    }
    return product;
}

EvidenceWeight weightOf(const ByYear& with, const ByYear& without)
{
    EvidenceWeight weight;
    for (std::size_t y = 0; y < with.size(); ++y) {
        if (with[y] > 0 && without[y] > 0)
            weight.bits += with[y] * std::log2(with[y] / without[y]);
        weight.moved += std::abs(with[y] - without[y]) / 2;
    }
    weight.bits = std::max(0.0, weight.bits);
    return weight;
}

// What a piece's cases are worth in the light of everything.
struct Judged {
    double sound = 0;                         // P(sound case | everything)
    ByYear wrong;                             // by year: P(a fault that matters | everything, year)
    std::vector<double> by_case;              // P(this fault, and it matters | everything)
    std::vector<std::size_t> likeliest_year;  // by case, of the years in which it matters
    const EvidenceCase* open_case = nullptr;  // the likeliest of the open ones,
    double open_share = 0;                    //   P(it | everything)
};

Judged judge(const DateEvidence& piece, const ByYear& years, const ByYear& likelihood)
{
    const ByYear& sound = piece.cases.front().likelihood;
    const double highest = *std::max_element(sound.begin(), sound.end());
    Judged judged;
    judged.wrong.assign(years.size(), 0);
    for (const EvidenceCase& one : piece.cases) {
        double share = 0, best = -1, open = 0;
        std::size_t best_year = 0;
        for (std::size_t y = 0; y < years.size(); ++y) {
            if (likelihood[y] <= 0)
                continue;
            const double holds = one.prior * one.likelihood[y] / likelihood[y];
            if (!one.fault) {
                judged.sound += years[y] * holds;
                continue;
            }
            if (one.is_open) {
                open += years[y] * holds;
                continue;
            }
            const double matters = holds * (highest > 0 ? 1 - sound[y] / highest : 1);
            judged.wrong[y] += matters;
            share += years[y] * matters;
            if (years[y] * matters > best) {
                best = years[y] * matters;
                best_year = y;
            }
        }
        if (open > judged.open_share) {
            judged.open_share = open;
            judged.open_case = &one;
        }
        judged.by_case.push_back(share);
        judged.likeliest_year.push_back(best_year);
    }
    return judged;
}

double contradictionOf(const std::vector<Judged>& pieces, const ByYear& years)
{
    double none = 0;
    for (std::size_t y = 0; y < years.size(); ++y) {
        double right = years[y];
        for (const Judged& piece : pieces)
            right *= 1 - std::min(1.0, piece.wrong[y]);
        none += right;
    }
    return std::clamp(1 - none, 0.0, 1.0);
}

std::vector<Culprit> culpritsOf(const std::vector<DateEvidence>& evidence,
                                const std::vector<Judged>& pieces, const Dating& dating,
                                double least)
{
    std::vector<Culprit> culprits;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const std::vector<double>& shares = pieces[i].by_case;
        Culprit culprit;
        culprit.evidence = i;
        culprit.probability = std::accumulate(shares.begin(), shares.end(), 0.0);
        if (culprit.probability < least || culprit.probability <= 0)
            continue;
        const auto best = static_cast<std::size_t>(std::max_element(shares.begin(), shares.end()) -
                                                   shares.begin());
        const EvidenceCase& likeliest = evidence[i].cases[best];
        culprit.fault = *likeliest.fault;
        culprit.fault_share = shares[best];
        if (culprit.fault == EvidenceFault::Misread)
            culprit.printed = dating.range.first + static_cast<int>(pieces[i].likeliest_year[best]);
        culprit.words = culpritInWords(evidence[i], likeliest, culprit);
        culprits.push_back(std::move(culprit));
    }
    std::stable_sort(culprits.begin(), culprits.end(), [](const Culprit& a, const Culprit& b) {
        return a.probability > b.probability;
    });
    return culprits;
}

// What the years tell beyond "some year of the range", in bits.
double bitsKnown(const ByYear& years)
{
    double bits = std::log2(static_cast<double>(years.size()));
    for (const double year : years)
        bits += year > 0 ? year * std::log2(year) : 0;
    return bits;
}

std::string edtfOf(const Dating& dating)
{
    if (bitsKnown(dating.years) < says_something)
        return {};
    return simplestForm(setOfYears({dating.set.begin(), dating.set.end()}), RunMeans::OneDate)
        .value_or("");
}

}  // namespace

std::vector<double> likelihoodOf(const DateEvidence& piece)
{
    ByYear sum(piece.cases.empty() ? 0 : piece.cases.front().likelihood.size(), 0);
    for (const EvidenceCase& one : piece.cases)
        for (std::size_t y = 0; y < sum.size(); ++y)
            sum[y] += one.prior * one.likelihood[y];
    return sum;
}

std::vector<int> smallestYearSet(const std::vector<double>& years, const YearRange& range,
                                 double share)
{
    std::vector<std::size_t> order(years.size());
    std::iota(order.begin(), order.end(), 0U);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return years[a] > years[b]; });
    std::vector<int> set;
    double sum = 0;
    for (const std::size_t y : order) {
        if (sum >= share)
            break;
        set.push_back(range.first + static_cast<int>(y));
        sum += years[y];
    }
    std::sort(set.begin(), set.end());
    return set;
}

Dating dateFrom(const std::vector<DateEvidence>& evidence, const YearRange& range,
                const DatingOptions& options)
{
    checkDatingOptions(options);
    if (range.first > range.last)
        throw std::invalid_argument("the range of years must not end before it begins");
    std::vector<ByYear> likelihoods;
    for (const DateEvidence& piece : evidence) {
        checkPiece(piece, range.size());
        likelihoods.push_back(likelihoodOf(piece));
    }
    Dating dating;
    dating.range = range;
    dating.years = normalisedYears(productBut(likelihoods, evidence.size(), range.size()));
    dating.set = smallestYearSet(dating.years, range, options.set_share);
    dating.edtf = edtfOf(dating);
    std::vector<Judged> judged;
    for (std::size_t i = 0; i < evidence.size(); ++i) {
        judged.push_back(judge(evidence[i], dating.years, likelihoods[i]));
        const ByYear without = normalisedYears(productBut(likelihoods, i, range.size()));
        dating.weights.push_back(weightOf(dating.years, without));
        dating.weights.back().sound = judged.back().sound;
        dating.weights.back().words = moveInWords(dating, without, dating.weights.back());
        if (judged.back().open_share > judged.back().sound)
            dating.weights.back().words +=
                openInWords(*judged.back().open_case, judged.back().open_share);
    }
    dating.contradiction = contradictionOf(judged, dating.years);
    dating.is_contradiction = dating.contradiction >= options.alarm_from;
    if (dating.is_contradiction)
        dating.culprits = culpritsOf(evidence, judged, dating, options.least_culprit);
    return dating;
}

}  // namespace models
