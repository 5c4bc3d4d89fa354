#include "models/maker_posterior.h"

#include <algorithm>
#include <numeric>

namespace models {

namespace {

constexpr double dated_from = 2;  // the likeliest year against the mean year

using Years = std::vector<double>;

double sumOf(const Years& years)
{
    return std::accumulate(years.begin(), years.end(), 0.0);
}

Years product(const Years& a, const Years& b)
{
    Years both(a.size());
    for (std::size_t y = 0; y < a.size(); ++y)
        both[y] = a[y] * b[y];
    return both;
}

Years scaled(Years years, double factor)
{
    for (double& year : years)
        year *= factor;
    return years;
}

Years normalised(const Years& years)
{
    const double sum = sumOf(years);
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
        type_years_ = type ? softYears(type->introduced, type->withdrawn, compiled.range)
                           : Years(compiled.range.size(), 1);
        date_odds_.assign(compiled.range.size(), 1);
        markless_odds_ = date_odds_;
        unknown_odds_.assign(compiled.range.size(), 1);
        for (const StampEvidence& stamp : stamps) {
            date_odds_ = product(date_odds_, stamp.dateOdds());
            markless_odds_ = product(markless_odds_, stamp.withoutMark());
            unknown_odds_ = product(unknown_odds_, stamp.withUnknownMark());
        }
    }

    Posterior weigh() const;

private:
    std::vector<MakerPosterior> priors() const;
    void weighMarks(MakerPosterior& maker) const;
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
        const Years own = normalised(softYears(maker.from, maker.to, compiled_.range));
        const Years with_type = product(own, type_years_);
        one.type_fit = sumOf(with_type);
        one.prior_years = normalised(with_type);
        one.prior = one.share * one.type_fit;
        sum += one.prior;
    }
    for (MakerPosterior& one : makers)
        one.prior *= (1 - options_.unknown_prior) / sum;
    return makers;
}

// Which of its marks a maker used in a year goes by the years in which each is known.
void MakerWeigher::weighMarks(MakerPosterior& maker) const
{
    const std::vector<std::size_t>& marks = compiled_.marks_of_maker[maker.maker];
    maker.has_marks = !marks.empty();
    const Years prior = scaled(maker.prior_years, maker.prior);
    if (marks.empty()) {  // whatever its mark was, it is in no list
        maker.years = product(prior, unknown_odds_);
        return;
    }
    Years of_all(prior.size(), 0);
    for (const std::size_t mark : marks)
        for (std::size_t y = 0; y < of_all.size(); ++y)
            of_all[y] += compiled_.marks[mark].years[y];
    maker.years = prior;
    std::vector<Years> by_mark(marks.size(), prior);
    for (const StampEvidence& stamp : stamps_) {
        Years any(prior.size(), 0);
        for (std::size_t k = 0; k < marks.size(); ++k) {
            const Years odds = stamp.withMark(marks[k]);
            by_mark[k] = product(by_mark[k], odds);
            for (std::size_t y = 0; y < any.size(); ++y)
                any[y] += compiled_.marks[marks[k]].years[y] / of_all[y] * odds[y];
        }
        maker.years = product(maker.years, any);
    }
    double best = -1;
    for (std::size_t k = 0; k < marks.size(); ++k) {
        double fit = 0;
        for (std::size_t y = 0; y < prior.size(); ++y)
            fit += compiled_.marks[marks[k]].years[y] / of_all[y] * by_mark[k][y];
        if (fit > best) {
            best = fit;
            maker.best_mark = marks[k];
        }
    }
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
    const double highest = *std::max_element(date_odds_.begin(), date_odds_.end());
    const double lowest = *std::min_element(date_odds_.begin(), date_odds_.end());
    const double mean = sumOf(date_odds_) / static_cast<double>(date_odds_.size());
    posterior.has_dates = highest > dated_from * mean;
    posterior.makers = priors();
    posterior.date_shares = tradeYears(posterior.makers);
    for (std::size_t y = 0; y < date_odds_.size(); ++y)
        posterior.date_shares[y] *= date_odds_[y] - lowest;
    posterior.date_shares = normalised(posterior.date_shares);
    weighUnknown(posterior);
    double sum = posterior.unknown_joint;
    for (MakerPosterior& maker : posterior.makers) {
        weighMarks(maker);
        maker.dated = maker.prior * sumOf(product(maker.prior_years, date_odds_));
        maker.markless = maker.prior * sumOf(product(maker.prior_years, markless_odds_));
        maker.joint = sumOf(maker.years);
        maker.years = normalised(maker.years);
        sum += maker.joint;
    }
    for (MakerPosterior& maker : posterior.makers)
        maker.probability = maker.joint / sum;
    posterior.unknown_maker = posterior.unknown_joint / sum;
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
