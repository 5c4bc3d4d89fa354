#include "models/maker_posterior.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace models {

namespace {

constexpr double dated_from = 4;  // the likeliest year against the mean year

double sumOf(const std::vector<double>& values)
{
    return std::accumulate(values.begin(), values.end(), 0.0);
}

double countOf(const CandidateOptions& options, const std::string& maker_id)
{
    const auto found = options.archive_counts.find(maker_id);
    return 1 + (found == options.archive_counts.end() ? 0 : std::max(0.0, found->second));
}

// Log of a sum whose terms are given as logs; the first is `one`.
class LogSum {
public:
    explicit LogSum(double one) : largest_(one) {}
    void add(double log_term)
    {
        if (log_term > largest_) {
            sum_ = sum_ * std::exp(largest_ - log_term) + 1;
            largest_ = log_term;
        } else {
            sum_ += std::exp(log_term - largest_);
        }
    }
    double value() const { return largest_ + std::log(sum_); }

private:
    double largest_, sum_ = 1;
};

}  // namespace

MakerWeigher::MakerWeigher(const std::vector<StampEvidence>& stamps, const MakerRegister& known,
                           const CompiledRegister& compiled, const ItemType* type,
                           const CandidateOptions& options)
    : stamps_(stamps),
      known_(known),
      compiled_(compiled),
      options_(options),
      dates_(std::vector<double>(compiled.range.size(), 1)),
      markless_(dates_),
      other_marks_(dates_),
      unknown_(dates_),
      touched_(known.makers.size(), false)
{
    suitType(type);
    priors_ = priors();
    trade_years_ = tradeYears(priors_);
    for (const StampEvidence& stamp : stamps) {
        dates_.multiply(stamp.dateOdds());
        markless_.multiply(stamp.withoutMark());
        other_marks_.multiply(stamp.withOtherMark());
        unknown_.multiply(stamp.withUnknownMark());
        for (const std::uint32_t mark : stamp.marks())
            touched_[compiled.marks[mark].maker] = true;
    }
}

void MakerWeigher::suitType(const ItemType* type)
{
    type_fit_.assign(compiled_.year_shares.size(), 1);
    if (!type)
        return;
    const std::vector<double> type_years =
        softYears(type->introduced, type->withdrawn, compiled_.range);
    for (std::size_t shape = 0; shape < type_fit_.size(); ++shape) {
        const std::vector<double> with_type = product(compiled_.year_shares[shape], type_years);
        type_fit_[shape] = sumOf(with_type);
        typed_years_.push_back(normalised(with_type));
    }
}

// P(maker) before looking.
std::vector<MakerPosterior> MakerWeigher::priors() const
{
    std::vector<MakerPosterior> makers(known_.makers.size());
    double counts = 0, sum = 0;
    for (std::size_t m = 0; m < makers.size(); ++m)
        counts += makers[m].share = countOf(options_, known_.makers[m].maker_id);
    for (std::size_t m = 0; m < makers.size(); ++m) {
        MakerPosterior& one = makers[m];
        one.maker = m;
        one.share /= counts;
        one.type_fit = type_fit_[compiled_.years_of_maker[m]];
        one.prior = one.share * one.type_fit;
        sum += one.prior;
    }
    for (MakerPosterior& one : makers)
        one.prior *= (1 - options_.unknown_prior) / sum;
    return makers;
}

// How much all known makers together made in each year.
std::vector<double> MakerWeigher::tradeYears(const std::vector<MakerPosterior>& makers) const
{
    const std::vector<std::vector<double>>& prior_years = priorYears();
    std::vector<double> of_shape(prior_years.size(), 0), trade(compiled_.range.size(), 0);
    for (const MakerPosterior& maker : makers)
        of_shape[compiled_.years_of_maker[maker.maker]] += maker.prior;
    for (std::size_t shape = 0; shape < of_shape.size(); ++shape)
        if (of_shape[shape] > 0)
            for (std::size_t y = 0; y < trade.size(); ++y)
                trade[y] += of_shape[shape] * prior_years[shape][y];
    return normalised(std::move(trade));
}

// P(stamp | this maker, year) / P(stamp | other text), by year. Which of its marks a maker used in
// a year goes by the years in which each is known.
std::vector<double> MakerWeigher::marksOnStamp(std::size_t maker, const StampEvidence& stamp) const
{
    std::vector<double> of_all(compiled_.range.size(), 0);
    for (const std::size_t mark : compiled_.marks_of_maker[maker])
        for (std::size_t y = 0; y < of_all.size(); ++y)
            of_all[y] += compiled_.yearsOfMark(mark)[y];
    std::vector<double> any = stamp.withOtherMark();
    for (const std::size_t mark : compiled_.marks_of_maker[maker]) {
        if (!std::binary_search(stamp.marks().begin(), stamp.marks().end(), mark))
            continue;
        const std::vector<double> odds = stamp.withMark(mark);
        const std::vector<double>& use = compiled_.yearsOfMark(mark);
        for (std::size_t y = 0; y < any.size(); ++y)
            any[y] += use[y] / of_all[y] * (odds[y] - stamp.withOtherMark()[y]);
    }
    return any;
}

// By year, all that was read times the maker's own share of the year.
YearProduct MakerWeigher::jointOf(std::size_t maker) const
{
    YearProduct joint(priorYears()[compiled_.years_of_maker[maker]]);
    for (const StampEvidence& stamp : stamps_)
        joint.multiply(compiled_.marks_of_maker[maker].empty() ? stamp.withUnknownMark()
                                                               : marksOnStamp(maker, stamp));
    return joint;
}

std::size_t MakerWeigher::bestMark(std::size_t maker) const
{
    const std::vector<std::size_t>& marks = compiled_.marks_of_maker[maker];
    std::size_t best = marks.front();
    double best_fit = -std::numeric_limits<double>::infinity();
    for (const std::size_t mark : marks) {
        YearProduct fit(
            product(priorYears()[compiled_.years_of_maker[maker]], compiled_.yearsOfMark(mark)));
        for (const StampEvidence& stamp : stamps_)
            fit.multiply(stamp.withMark(mark));
        if (fit.logSum() > best_fit) {
            best_fit = fit.logSum();
            best = mark;
        }
    }
    return best;
}

void MakerWeigher::weighMarks(MakerPosterior& maker) const
{
    const std::size_t shape = compiled_.years_of_maker[maker.maker];
    maker.has_marks = !compiled_.marks_of_maker[maker.maker].empty();
    if (!maker.has_marks) {  // whatever its mark was, it is in no list
        maker.log_joint = std::log(maker.prior) + unknown_.logSum(priorYears()[shape]);
        return;
    }
    maker.best_mark = compiled_.marks_of_maker[maker.maker].front();
    if (!touched_[maker.maker])
        return;
    maker.log_joint = std::log(maker.prior) + jointOf(maker.maker).logSum();
    maker.best_mark = bestMark(maker.maker);
}

// What does not depend on the maker's marks: the same for all makers with the same years.
void MakerWeigher::weighYears(Posterior& posterior) const
{
    std::vector<double> dated, markless, other;
    for (const std::vector<double>& years : priorYears()) {
        dated.push_back(dates_.logSum(years));
        markless.push_back(markless_.logSum(years));
        other.push_back(other_marks_.logSum(years));
    }
    for (MakerPosterior& maker : posterior.makers) {
        const std::size_t shape = compiled_.years_of_maker[maker.maker];
        const double log_prior = std::log(maker.prior);
        maker.log_dated = log_prior + dated[shape];
        maker.log_markless = log_prior + markless[shape];
        maker.log_joint = log_prior + other[shape];
    }
}

// An unknown maker worked when the known ones did, all together.
void MakerWeigher::weighUnknown(Posterior& posterior) const
{
    const double log_prior = std::log(options_.unknown_prior);
    posterior.log_unknown_joint = log_prior + unknown_.logSum(trade_years_);
    LogSum joint(posterior.log_unknown_joint), markless(log_prior + markless_.logSum(trade_years_)),
        dated(log_prior + dates_.logSum(trade_years_));
    for (const MakerPosterior& maker : posterior.makers) {
        joint.add(maker.log_joint);
        markless.add(maker.log_markless);
        dated.add(maker.log_dated);
    }
    posterior.log_all_joint = joint.value();
    posterior.log_all_markless = markless.value();
    posterior.log_all_dated = dated.value();
}

// What the dates say, whoever the maker.
void MakerWeigher::weighDates(Posterior& posterior) const
{
    for (const StampEvidence& stamp : stamps_)
        for (const LineEvidence& line : stamp.lines()) {
            if (line.yearBeyond())
                posterior.year_beyond = line.yearBeyond();
            if (const auto year = line.plainYear())
                posterior.plain_years.push_back(*year);
        }
    std::sort(posterior.plain_years.begin(), posterior.plain_years.end());
    const std::vector<double>& dates = dates_.values();
    const double lowest = *std::min_element(dates.begin(), dates.end());
    posterior.has_dates =
        !posterior.year_beyond && dated_from * sumOf(dates) < static_cast<double>(dates.size());
    posterior.date_shares = trade_years_;
    for (std::size_t y = 0; y < dates.size(); ++y)
        posterior.date_shares[y] *= dates[y] - lowest;
    posterior.date_shares = normalised(std::move(posterior.date_shares));
}

Posterior MakerWeigher::weigh() const
{
    Posterior posterior;
    posterior.makers = priors_;
    weighDates(posterior);
    weighYears(posterior);
    for (MakerPosterior& maker : posterior.makers)
        weighMarks(maker);
    weighUnknown(posterior);
    for (MakerPosterior& maker : posterior.makers)
        maker.probability = std::exp(maker.log_joint - posterior.log_all_joint);
    posterior.unknown_maker = std::exp(posterior.log_unknown_joint - posterior.log_all_joint);
    return posterior;
}

std::vector<double> MakerWeigher::yearsOf(std::size_t maker) const
{
    return normalised(jointOf(maker).values());
}

std::vector<double> MakerWeigher::yearsOfUnknown() const
{
    return normalised(product(trade_years_, unknown_.values()));
}

}  // namespace models
