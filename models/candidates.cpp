#include "models/candidates.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <stdexcept>

#include "models/candidate_reasons.h"
#include "models/compiled_register.h"
#include "models/edtf_set.h"
#include "models/maker_posterior.h"
#include "models/settling_cell.h"
#include "models/stamp_evidence.h"

namespace models {

namespace {

constexpr std::size_t most_years = 10;
constexpr double edtf_share = 0.95;
constexpr double least_year = 1e-4;  // a year less likely is not listed

void checkOptions(const CandidateOptions& options)
{
    if (!(options.unknown_prior > 0 && options.unknown_prior < 1))
        throw std::invalid_argument("CandidateOptions.unknown_prior must be above 0 and below 1");
}

// Likeliest first.
std::vector<YearShare> yearShares(const std::vector<double>& years, const YearRange& range)
{
    std::vector<YearShare> shares;
    for (std::size_t y = 0; y < years.size(); ++y)
        shares.push_back({range.first + static_cast<int>(y), years[y]});
    std::stable_sort(shares.begin(), shares.end(), [](const YearShare& a, const YearShare& b) {
        return a.probability > b.probability;
    });
    return shares;
}

std::string smallestSet(const std::vector<YearShare>& shares)
{
    std::vector<std::int64_t> years;
    double sum = 0;
    for (const YearShare& share : shares) {
        if (sum >= edtf_share)
            break;
        years.push_back(share.year);
        sum += share.probability;
    }
    return simplestForm(setOfYears(years), RunMeans::OneDate).value_or("");
}

Candidate candidateOf(const MakerPosterior& maker, const MakerRegister& known,
                      const CompiledRegister& compiled)
{
    Candidate candidate;
    candidate.maker_id = known.makers[maker.maker].maker_id;
    candidate.maker = known.makers[maker.maker].name;
    if (maker.has_marks)
        candidate.mark = compiled.marks[maker.best_mark].text;
    candidate.probability = maker.probability;
    return candidate;
}

void tellYears(Candidate& candidate, const std::vector<double>& years, const YearRange& range)
{
    candidate.years = yearShares(years, range);
    candidate.edtf = smallestSet(candidate.years);
    if (candidate.years.size() > most_years)
        candidate.years.resize(most_years);
    while (candidate.years.size() > 1 && candidate.years.back().probability < least_year)
        candidate.years.pop_back();
}

}  // namespace

CandidateRanker::CandidateRanker(MakerRegister known, const ReadingErrors& errors)
    : known_(std::move(known)), compiled_(std::make_unique<CompiledRegister>(known_, errors))
{
}

CandidateRanker::~CandidateRanker() = default;
CandidateRanker::CandidateRanker(CandidateRanker&&) noexcept = default;

CandidateList CandidateRanker::rank(const ItemEvidence& evidence,
                                    const CandidateOptions& options) const
{
    checkOptions(options);
    const ItemType* type = evidence.type_id.empty() ? nullptr : known_.itemType(evidence.type_id);
    if (!evidence.type_id.empty() && !type)
        throw std::invalid_argument("the item type '" + evidence.type_id +
                                    "' is not in the register");
    CandidateList list;
    if (known_.makers.empty())
        return list;
    std::vector<StampEvidence> stamps;
    for (const Reading& reading : evidence.stamps)
        stamps.emplace_back(reading, *compiled_);
    const MakerWeigher weigher(stamps, known_, *compiled_, type, options);
    const Posterior posterior = weigher.weigh();

    std::vector<const MakerPosterior*> ranked;
    for (const MakerPosterior& maker : posterior.makers)
        ranked.push_back(&maker);
    // In the register's order where they are equal, but for what rounding makes of them.
    const auto share = [](const MakerPosterior& maker) {
        return std::round(maker.probability * 1e12);
    };
    const auto listed =
        std::min(std::max(options.most, options.find_settling_cell ? settling_contenders : 0),
                 ranked.size());
    std::partial_sort(ranked.begin(), ranked.begin() + static_cast<long>(listed), ranked.end(),
                      [&](const auto* a, const auto* b) {
                          return share(*a) != share(*b) ? share(*a) > share(*b)
                                                        : a->maker < b->maker;
                      });
    list.unknown_maker = posterior.unknown_maker;
    for (std::size_t i = 0; i < ranked.size(); ++i) {
        if (i >= options.most) {
            list.other_makers += ranked[i]->probability;
            continue;
        }
        Candidate candidate = candidateOf(*ranked[i], known_, *compiled_);
        if (posterior.has_dates)
            tellYears(candidate, weigher.yearsOf(ranked[i]->maker), compiled_->range);
        candidate.reasons =
            reasonsFor(*ranked[i], posterior, evidence, stamps, known_, *compiled_, options);
        list.candidates.push_back(std::move(candidate));
    }
    if (options.find_settling_cell)
        list.settling =
            settlingCell(evidence, stamps, weigher, posterior, ranked, known_, *compiled_);
    return list;
}

CandidateList rankCandidates(const ItemEvidence& evidence, const MakerRegister& known,
                             const CandidateOptions& options)
{
    return CandidateRanker(known).rank(evidence, options);
}

}  // namespace models
