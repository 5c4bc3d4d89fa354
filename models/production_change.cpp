#include "models/production_change.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numeric>
#include <sstream>
#include <stdexcept>

#include "models/change_likelihood.h"
#include "models/dating_words.h"

namespace models {

namespace {

using BySteps = std::vector<double>;

constexpr double anywhere = 0.1;   // a maker's change need not lie where the others' lie
constexpr double odd_below = 0.1;  // an item less likely than this is told
constexpr std::size_t most_odd = 10;

void checkChange(const std::vector<ChangeItem>& items, const YearRange& range,
                 const ChangeOptions& options)
{
    if (range.first > range.last)
        throw std::invalid_argument("the range of years must not end before it begins");
    if (!(options.interval_share > 0 && options.interval_share < 1))
        throw std::invalid_argument("ChangeOptions.interval_share must be above 0 and below 1");
    if (options.steps_a_year < 1 || options.steps_a_year > 12)
        throw std::invalid_argument("ChangeOptions.steps_a_year must be 1 to 12");
    if (!(options.makers_apart_years > 0))
        throw std::invalid_argument("ChangeOptions.makers_apart_years must be above 0");
    for (const ChangeItem& item : items) {
        const double sum = std::accumulate(item.years.begin(), item.years.end(), 0.0);
        if (item.years.size() != range.size() || std::abs(sum - 1) > 1e-6)
            throw std::invalid_argument("the years of item '" + item.name +
                                        "' must be the range's and sum to 1");
    }
}

BySteps summedToOne(BySteps values)
{
    const double sum = std::accumulate(values.begin(), values.end(), 0.0);
    for (double& value : values)
        value /= sum;
    return values;
}

// The shortest run of steps that holds the share, its ends cut within a step so that it holds no
// more; a step's probability lies evenly in it.
void findInterval(ChangePosterior& change, const YearRange& range, const ChangeOptions& options)
{
    const BySteps& time = change.time;
    std::size_t best_from = 0, best_end = time.size(), end = 0;
    double held = 0, best_held = 1;
    for (std::size_t from = 0; from < time.size(); ++from) {
        while (end < time.size() && held < options.interval_share)
            held += time[end++];
        if (held < options.interval_share)
            break;
        const std::size_t length = end - from, best = best_end - best_from;
        if (length < best || (length == best && held > best_held)) {
            best_from = from;
            best_end = end;
            best_held = held;
        }
        held -= time[from];
    }
    double from = static_cast<double>(best_from), to = static_cast<double>(best_end);
    const double surplus = std::max(0.0, best_held - options.interval_share);
    const bool cut_front = time[best_from] < time[best_end - 1];
    const double edge = cut_front ? time[best_from] : time[best_end - 1];
    const double cut = edge > 0 ? std::min(1.0, surplus / edge) : 0;
    (cut_front ? from : to) += cut_front ? cut : -cut;
    change.from = range.first + from / options.steps_a_year;
    change.to = range.first + to / options.steps_a_year;
}

// Sums over shapes and steps, the steps weighed by `prior` (summing to 1).
ChangePosterior posteriorOf(const ChangeLikelihood& likelihood, const BySteps& prior)
{
    const std::vector<ChangeShape>& shapes = changeShapes();
    double highest = likelihood.none;
    for (const BySteps& steps : likelihood.by_shape)
        highest = std::max(highest, *std::max_element(steps.begin(), steps.end()));
    ChangePosterior change;
    change.time.assign(prior.size(), 0);
    double sum = 0, introduced = 0, overlap = 0;
    const double shape_prior = 1.0 / static_cast<double>(shapes.size());
    for (std::size_t s = 0; s < shapes.size(); ++s)
        for (std::size_t t = 0; t < prior.size(); ++t) {
            const double joint =
                shape_prior * prior[t] * std::exp(likelihood.by_shape[s][t] - highest);
            change.time[t] += joint;
            sum += joint;
            introduced += shapes[s].direction == ChangeDirection::Introduced ? joint : 0;
            overlap += joint * shapes[s].overlap_years;
        }
    const double none = std::exp(likelihood.none - highest);
    change.is_change = sum / (sum + none);
    change.introduced = sum > 0 ? introduced / sum : 0.5;
    change.overlap_years = sum > 0 ? overlap / sum : 0;
    change.time = sum > 0 ? summedToOne(change.time) : prior;
    return change;
}

std::string countedItems(std::size_t count)
{
    return std::to_string(count) + (count == 1 ? " item" : " items");
}

std::string changeInWords(const ChangePosterior& change, const ChangeOptions& options,
                          double range_years)
{
    const std::string seen = "of " + countedItems(change.with + change.without) + ", " +
                             std::to_string(change.with) + " with it and " +
                             std::to_string(change.without) + " without";
    const std::string interval = timeInWords(change.from) + " and " + timeInWords(change.to) +
                                 " (" + percentInWords(options.interval_share) + ")";
    if (change.can_say)
        return std::string(change.direction() == ChangeDirection::Introduced ? "came in"
                                                                             : "was given up") +
               " between " + interval + ", likeliest " + timeInWords(change.likeliest) + "; " +
               seen;
    if (change.with + change.without == 0)
        return "the items cannot say: none that is dated shows whether it has the detail";
    if (change.with == 0 || change.without == 0)
        return "the items cannot say: all are alike; " + seen;
    if (change.is_change < options.least_change)
        return "the items cannot say: that there was a change at all has only " +
               percentInWords(change.is_change) + "; " + seen;
    if (change.to - change.from > options.widest_interval * range_years)
        return "the items cannot say when: it can lie anywhere between " + interval + "; " + seen;
    return "the items cannot say which way it went; " + seen;
}

void conclude(ChangePosterior& change, const std::vector<const ChangeItem*>& items,
              const YearRange& range, const ChangeOptions& options, const ChangeGrid& grid)
{
    for (const ChangeItem* item : items)
        ++(item->has_detail ? change.with : change.without);
    findInterval(change, range, options);
    change.likeliest = grid.middleOf(static_cast<std::size_t>(
        std::max_element(change.time.begin(), change.time.end()) - change.time.begin()));
    const auto years = static_cast<double>(range.size());
    change.can_say = change.with > 0 && change.without > 0 &&
                     change.is_change >= options.least_change &&
                     std::abs(change.introduced - 0.5) > 0.3 &&
                     change.to - change.from <= options.widest_interval * years;
    change.words = changeInWords(change, options, years);
}

// Where a maker's change lies, from where those of others lie.
BySteps priorFromOthers(const BySteps& others, const ChangeOptions& options)
{
    const double per_step = std::exp(-1 / (options.makers_apart_years * options.steps_a_year));
    BySteps spread(others.size(), 0);
    double carried = 0;
    for (std::size_t t = 0; t < others.size(); ++t) {
        carried = carried * per_step + others[t];
        spread[t] += carried;
    }
    carried = 0;
    for (std::size_t t = others.size(); t-- > 0;) {
        spread[t] += carried;
        carried = (carried + others[t]) * per_step;
    }
    spread = summedToOne(spread);
    for (double& value : spread)
        value = (1 - anywhere) * value + anywhere / static_cast<double>(spread.size());
    return spread;
}

std::vector<MakerChange> changesByMaker(const std::vector<ChangeItem>& items,
                                        const YearRange& range, const ChangeOptions& options,
                                        const ChangeGrid& grid, const BySteps& flat)
{
    std::map<std::string, std::vector<const ChangeItem*>> by_maker;
    for (const ChangeItem& item : items)
        if (!item.maker_id.empty())
            by_maker[item.maker_id].push_back(&item);
    std::vector<MakerChange> makers;
    for (const auto& [maker_id, own] : by_maker) {
        if (own.size() < 2)
            continue;
        std::vector<const ChangeItem*> others;
        for (const ChangeItem& item : items)
            if (item.maker_id != maker_id)
                others.push_back(&item);
        const ChangePosterior of_others = posteriorOf(grid.likelihoodOf(others), flat);
        BySteps prior = priorFromOthers(of_others.time, options);
        for (std::size_t t = 0; t < prior.size(); ++t)  // as far as the others have a change at all
            prior[t] = of_others.is_change * prior[t] + (1 - of_others.is_change) * flat[t];
        MakerChange maker{maker_id, posteriorOf(grid.likelihoodOf(own), prior)};
        conclude(maker.change, own, range, options, grid);
        makers.push_back(std::move(maker));
    }
    return makers;
}

// Items that the likeliest change makes unlikely, with the overlap as it is on the mean.
std::vector<std::string> oddItems(const std::vector<ChangeItem>& items, const YearRange& range,
                                  const ChangePosterior& change)
{
    constexpr double slip = 0.02;
    std::vector<std::pair<double, std::string>> odd;
    for (const ChangeItem& item : items) {
        double is_new = 0;
        for (std::size_t y = 0; y < item.years.size(); ++y)
            is_new += item.years[y] * newShare(range.first + static_cast<int>(y), change.likeliest,
                                               change.overlap_years);
        const bool looks_new =
            item.has_detail == (change.direction() == ChangeDirection::Introduced);
        const double seen = slip + (1 - 2 * slip) * (looks_new ? is_new : 1 - is_new);
        if (seen < odd_below)
            odd.emplace_back(seen, item.name);
    }
    std::stable_sort(odd.begin(), odd.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<std::string> names;
    for (const auto& [seen, name] : odd)
        if (names.size() < most_odd)
            names.push_back(name);
    return names;
}

}  // namespace

ProductionChange findProductionChange(const std::vector<ChangeItem>& items, const YearRange& range,
                                      const ChangeOptions& options)
{
    checkChange(items, range, options);
    const ChangeGrid grid(range, options.steps_a_year);
    const BySteps flat(grid.steps(), 1.0 / static_cast<double>(grid.steps()));
    std::vector<const ChangeItem*> all;
    for (const ChangeItem& item : items)
        all.push_back(&item);
    ProductionChange found;
    found.range = range;
    found.steps_a_year = options.steps_a_year;
    found.pooled = posteriorOf(grid.likelihoodOf(all), flat);
    conclude(found.pooled, all, range, options, grid);
    found.makers = changesByMaker(items, range, options, grid, flat);
    if (found.pooled.can_say)
        found.odd = oddItems(items, range, found.pooled);
    return found;
}

std::string timeInWords(double year)
{
    static constexpr std::array<const char*, 3> thirds = {"early ", "mid-", "late "};
    const double whole = std::floor(year);
    const auto third = std::min<std::size_t>(2, static_cast<std::size_t>((year - whole) * 3));
    return thirds[third] + std::to_string(static_cast<int>(whole));
}

}  // namespace models
