#include "models/maker_posterior.h"

#include <algorithm>
#include <numeric>

namespace models {

namespace {

constexpr double dated_from = 2;  // the likeliest year against the mean year

// By year of the range. The odds of a dozen clear stamps multiplied pass what a double can hold.
using Years = std::vector<long double>;

long double sumOf(const Years& years)
{
    return std::accumulate(years.begin(), years.end(), 0.0L);
}

Years wide(const std::vector<double>& years)
{
    return {years.begin(), years.end()};
}

std::vector<double> narrow(const Years& years)
{
    std::vector<double> shares;
    for (const long double year : years)
        shares.push_back(static_cast<double>(year));
    return shares;
}

Years product(const Years& a, const Years& b)
{
    Years both(a.size());
    for (std::size_t y = 0; y < a.size(); ++y)
        both[y] = a[y] * b[y];
    return both;
}

Years scaled(Years years, long double factor)
{
    for (long double& year : years)
        year *= factor;
    return years;
}

Years normalised(const Years& years)
{
    const long double sum = sumOf(years);
    return sum > 0 ? scaled(years, 1 / sum) : years;
}

double countOf(const CandidateOptions& options, const std::string& maker_id)
{
    const auto found = options.archive_counts.find(maker_id);
    return 1 + (found == options.archive_counts.end() ? 0 : std::max(0.0, found->second));
}

// How much all known makers together made in each year.
Years tradeYears(const std::vector<MakerPosterior>& makers)
{
    Years trade(makers.front().prior_years.size(), 0);
    for (const MakerPosterior& maker : makers)
        for (std::size_t y = 0; y < trade.size(); ++y)
            trade[y] += maker.prior * maker.prior_years[y];
    return normalised(trade);
}

class MakerWeigher {
public:
    MakerWeigher(const std::vector<StampEvidence>& stamps, const MakerRegister& known,
                 const CompiledRegister& compiled, const ItemType* type,
                 const CandidateOptions& options)
        : stamps_(stamps), known_(known), compiled_(compiled), options_(options)
    {
        type_years_ = type ? wide(softYears(type->introduced, type->withdrawn, compiled.range))
                           : Years(compiled.range.size(), 1);
        date_odds_.assign(compiled.range.size(), 1);
        markless_odds_ = date_odds_;
        unknown_odds_.assign(compiled.range.size(), 1);
        for (const StampEvidence& stamp : stamps) {
            date_odds_ = product(date_odds_, wide(stamp.dateOdds()));
            markless_odds_ = product(markless_odds_, wide(stamp.withoutMark()));
            unknown_odds_ = product(unknown_odds_, wide(stamp.withUnknownMark()));
        }
    }

    Posterior weigh() const;

private:
    std::vector<MakerPosterior> priors() const;
    Years weighMarks(MakerPosterior& maker) const;
    void weighUnknown(Posterior& posterior) const;

    const std::vector<StampEvidence>& stamps_;
    const MakerRegister& known_;
    const CompiledRegister& compiled_;
    const CandidateOptions& options_;
    Years type_years_, date_odds_, markless_odds_, unknown_odds_;
};

// P(maker, year) before looking, as the maker's prior and its years.
std::vector<MakerPosterior> MakerWeigher::priors() const
{
    std::vector<MakerPosterior> makers(known_.makers.size());
    double counts = 0, sum = 0;
    for (const Maker& maker : known_.makers)
        counts += countOf(options_, maker.maker_id);
    for (std::size_t m = 0; m < makers.size(); ++m) {
        MakerPosterior& one = makers[m];
        const Maker& maker = known_.makers[m];
        one.maker = m;
        one.share = countOf(options_, maker.maker_id) / counts;
        const Years own = normalised(wide(softYears(maker.from, maker.to, compiled_.range)));
        const Years with_type = product(own, type_years_);
        one.type_fit = static_cast<double>(sumOf(with_type));
        one.prior_years = narrow(normalised(with_type));
        one.prior = one.share * one.type_fit;
        sum += one.prior;
    }
    for (MakerPosterior& one : makers)
        one.prior *= (1 - options_.unknown_prior) / sum;
    return makers;
}

// By year, the prior times all that was read. Which of its marks a maker used in a year goes by the
// years in which each is known.
Years MakerWeigher::weighMarks(MakerPosterior& maker) const
{
    const std::vector<std::size_t>& marks = compiled_.marks_of_maker[maker.maker];
    maker.has_marks = !marks.empty();
    const Years prior = scaled(wide(maker.prior_years), maker.prior);
    if (marks.empty()) {  // whatever its mark was, it is in no list
        return product(prior, unknown_odds_);
    }
    Years of_all(prior.size(), 0);
    for (const std::size_t mark : marks)
        for (std::size_t y = 0; y < of_all.size(); ++y)
            of_all[y] += compiled_.marks[mark].years[y];
    Years joint = prior;
    std::vector<Years> by_mark(marks.size(), prior);
    for (const StampEvidence& stamp : stamps_) {
        Years any(prior.size(), 0);
        for (std::size_t k = 0; k < marks.size(); ++k) {
            const Years odds = wide(stamp.withMark(marks[k]));
            by_mark[k] = product(by_mark[k], odds);
            for (std::size_t y = 0; y < any.size(); ++y)
                any[y] += compiled_.marks[marks[k]].years[y] / of_all[y] * odds[y];
        }
        joint = product(joint, any);
    }
    long double best = -1;
    for (std::size_t k = 0; k < marks.size(); ++k) {
        long double fit = 0;
        for (std::size_t y = 0; y < prior.size(); ++y)
            fit += compiled_.marks[marks[k]].years[y] / of_all[y] * by_mark[k][y];
        if (fit > best) {
            best = fit;
            maker.best_mark = marks[k];
        }
    }
    return joint;
}

// An unknown maker worked when the known ones did, all together.
void MakerWeigher::weighUnknown(Posterior& posterior) const
{
    const Years prior = scaled(tradeYears(posterior.makers), options_.unknown_prior);
    posterior.unknown_markless = sumOf(product(prior, markless_odds_));
    posterior.unknown_joint = sumOf(product(prior, unknown_odds_));
    posterior.unknown_dated = sumOf(product(prior, date_odds_));
}

Posterior MakerWeigher::weigh() const
{
    Posterior posterior;
    const long double highest = *std::max_element(date_odds_.begin(), date_odds_.end());
    const long double lowest = *std::min_element(date_odds_.begin(), date_odds_.end());
    const long double mean = sumOf(date_odds_) / static_cast<long double>(date_odds_.size());
    posterior.has_dates = highest > dated_from * mean;
    posterior.makers = priors();
    Years date_shares = tradeYears(posterior.makers);
    for (std::size_t y = 0; y < date_odds_.size(); ++y)
        date_shares[y] *= date_odds_[y] - lowest;
    posterior.date_shares = narrow(normalised(date_shares));
    weighUnknown(posterior);
    long double sum = posterior.unknown_joint;
    for (MakerPosterior& maker : posterior.makers) {
        const Years joint = weighMarks(maker);
        const Years prior_years = wide(maker.prior_years);
        maker.dated = maker.prior * sumOf(product(prior_years, date_odds_));
        maker.markless = maker.prior * sumOf(product(prior_years, markless_odds_));
        maker.joint = sumOf(joint);
        maker.years = narrow(normalised(joint));
        sum += maker.joint;
    }
    for (MakerPosterior& maker : posterior.makers)
        maker.probability = static_cast<double>(maker.joint / sum);
    posterior.unknown_maker = static_cast<double>(posterior.unknown_joint / sum);
    return posterior;
}

}  // namespace

Posterior weighMakers(const std::vector<StampEvidence>& stamps, const MakerRegister& known,
                      const CompiledRegister& compiled, const ItemType* type,
                      const CandidateOptions& options)
{
    return MakerWeigher(stamps, known, compiled, type, options).weigh();
}

}  // namespace models
