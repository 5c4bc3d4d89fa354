#include "models/change_likelihood.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace models {

namespace {

// Alike before looking. Common practice, no source.
constexpr std::array<double, 6> overlaps = {0, 1, 2, 3, 5, 8};
constexpr std::array<double, 5> other_states = {0.005, 0.02, 0.05, 0.1, 0.15};

// The integral of a ramp from 0 at -1/2 to 1 at 1/2, up to `at`.
double rampArea(double at)
{
    if (at <= -0.5)
        return 0;
    if (at >= 0.5)
        return 0.5 + (at - 0.5);
    return (at + 0.5) * (at + 0.5) / 2;
}

// P(this many with, this many without | one share, the same always), the share alike from 0 to 1:
// the integral of s^w (1 - s)^n is w! n! / (w + n + 1)!.
double logAlwaysAlike(std::size_t with, std::size_t without)
{
    const auto w = static_cast<double>(with), n = static_cast<double>(without);
    return std::lgamma(w + 1) + std::lgamma(n + 1) - std::lgamma(w + n + 2);
}

// The years that an item can be of, with their probabilities.
std::vector<std::pair<std::size_t, double>> possibleYears(const std::vector<double>& years)
{
    constexpr double least = 1e-9;
    std::vector<std::pair<std::size_t, double>> possible;
    for (std::size_t y = 0; y < years.size(); ++y)
        if (years[y] > least)
            possible.emplace_back(y, years[y]);
    return possible;
}

}  // namespace

const std::vector<ChangeShape>& changeShapes()
{
    static const std::vector<ChangeShape> shapes = [] {
        std::vector<ChangeShape> all;
        for (const ChangeDirection direction :
             {ChangeDirection::Introduced, ChangeDirection::GivenUp})
            for (const double overlap : overlaps)
                for (const double other : other_states)
                    all.push_back({direction, overlap, other});
        return all;
    }();
    return shapes;
}

double newShare(int year, double middle, double overlap_years)
{
    const double begin = year - middle, end = year + 1 - middle;
    if (overlap_years <= 0)
        return std::clamp(end, 0.0, 1.0);
    return overlap_years * (rampArea(end / overlap_years) - rampArea(begin / overlap_years));
}

ChangeGrid::ChangeGrid(const YearRange& range, int steps_a_year)
    : range_(range),
      steps_a_year_(steps_a_year),
      steps_(range.size() * static_cast<std::size_t>(steps_a_year))
{
    for (const double overlap : overlaps) {
        std::vector<std::vector<double>> by_step(steps_);
        for (std::size_t step = 0; step < steps_; ++step)
            for (int year = range.first; year <= range.last; ++year)
                by_step[step].push_back(newShare(year, middleOf(step), overlap));
        shares_.push_back(std::move(by_step));
    }
}

double ChangeGrid::middleOf(std::size_t step) const
{
    return range_.first + (static_cast<double>(step) + 0.5) / steps_a_year_;
}

ChangeLikelihood ChangeGrid::likelihoodOf(const std::vector<const ChangeItem*>& items) const
{
    const std::vector<ChangeShape>& shapes = changeShapes();
    ChangeLikelihood likelihood;
    likelihood.by_shape.assign(shapes.size(), std::vector<double>(steps_, 0));
    std::size_t with = 0;
    std::vector<double> expected(steps_);
    for (const ChangeItem* item : items) {
        with += item->has_detail ? 1 : 0;
        const auto years = possibleYears(item->years);
        for (std::size_t o = 0; o < overlaps.size(); ++o) {
            for (std::size_t step = 0; step < steps_; ++step) {
                double sum = 0;
                for (const auto& [y, share] : years)
                    sum += share * shares_[o][step][y];
                expected[step] = std::clamp(sum, 0.0, 1.0);
            }
            for (std::size_t s = 0; s < shapes.size(); ++s) {
                if (shapes[s].overlap_years != overlaps[o])
                    continue;
                const bool looks_new =
                    item->has_detail == (shapes[s].direction == ChangeDirection::Introduced);
                const double slip = shapes[s].other_state;
                for (std::size_t step = 0; step < steps_; ++step) {
                    const double is_new = slip + (1 - 2 * slip) * expected[step];
                    likelihood.by_shape[s][step] += std::log(looks_new ? is_new : 1 - is_new);
                }
            }
        }
    }
    likelihood.none = logAlwaysAlike(with, items.size() - with);
    return likelihood;
}

}  // namespace models
