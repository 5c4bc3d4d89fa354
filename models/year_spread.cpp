#include "models/year_spread.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "models/edtf.h"

namespace models {

namespace {

using Weights = std::vector<double>;

std::optional<YearBounds> limitOf(const std::string& edtf)
{
    return edtf.empty() ? std::nullopt : edtfYearBounds(edtf);
}

}  // namespace

bool hasLimit(const std::string& from, const std::string& to)
{
    const auto begin = limitOf(from), end = limitOf(to);
    return (begin && begin->first) || (end && end->last);
}

std::vector<double> mixedYears(const std::vector<double>& a, double share_a,
                               const std::vector<double>& b, double share_b)
{
    Weights sum(a.size());
    for (std::size_t y = 0; y < a.size(); ++y)
        sum[y] = share_a * a[y] + share_b * b[y];
    return sum;
}

std::vector<double> scaledYears(double factor, std::vector<double> years)
{
    for (double& year : years)
        year *= factor;
    return years;
}

std::vector<double> anyYear(const YearRange& range)
{
    return Weights(range.size(), 1.0 / static_cast<double>(range.size()));
}

std::vector<double> summingToOne(std::vector<double> years)
{
    const double sum = std::accumulate(years.begin(), years.end(), 0.0);
    return sum > 0 ? scaledYears(1 / sum, std::move(years)) : years;
}

std::vector<double> yearsAfter(const std::vector<double>& years, double fading)
{
    Weights after(years.size());
    double carried = 0;
    for (std::size_t y = 0; y < years.size(); ++y) {
        carried = fading * carried + (1 - fading) * years[y];
        after[y] = carried;
    }
    return after;
}

std::vector<double> yearsBefore(const std::vector<double>& years, double fading)
{
    Weights before(years.rbegin(), years.rend());
    before = yearsAfter(before, fading);
    std::reverse(before.begin(), before.end());
    return before;
}

std::vector<double> periodWeights(const std::string& from, const std::string& to,
                                  const YearRange& range, const LimitSoftness& softness)
{
    const auto begin = limitOf(from), end = limitOf(to);
    Weights weights(range.size(), 1);
    for (std::size_t y = 0; y < weights.size(); ++y) {
        const int year = range.first + static_cast<int>(y);
        if (begin && begin->first && year < *begin->first)
            weights[y] *= std::exp((year - *begin->first) /
                                   (begin->soft ? softness.before_about : softness.before));
        if (end && end->last && year > *end->last)
            weights[y] *=
                std::exp((*end->last - year) / (end->soft ? softness.after_about : softness.after));
    }
    return weights;
}

}  // namespace models
