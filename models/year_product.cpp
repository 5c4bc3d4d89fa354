#include "models/year_product.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace models {

YearProduct::YearProduct(std::vector<double> first) : values_(std::move(first))
{
    rescale();
}

void YearProduct::multiply(const std::vector<double>& factors)
{
    for (std::size_t y = 0; y < values_.size(); ++y)
        values_[y] *= factors[y];
    rescale();
}

void YearProduct::rescale()
{
    const double largest = values_.empty() ? 0 : *std::max_element(values_.begin(), values_.end());
    if (largest <= 0)
        return;
    for (double& value : values_)
        value /= largest;
    log_scale_ += std::log(largest);
}

double YearProduct::logSum(const std::vector<double>& weights) const
{
    return std::log(productSum(values_, weights)) + log_scale_;
}

double YearProduct::logSum() const
{
    return std::log(std::accumulate(values_.begin(), values_.end(), 0.0)) + log_scale_;
}

double productSum(const std::vector<double>& a, const std::vector<double>& b)
{
    constexpr std::size_t side_by_side = 8;  // sums that need not wait for each other
    double sums[side_by_side] = {};
    std::size_t y = 0;
    for (; y + side_by_side <= a.size(); y += side_by_side)
        for (std::size_t i = 0; i < side_by_side; ++i)
            sums[i] += a[y + i] * b[y + i];
    for (; y < a.size(); ++y)
        sums[0] += a[y] * b[y];
    return std::accumulate(std::begin(sums), std::end(sums), 0.0);
}

std::vector<double> product(const std::vector<double>& a, const std::vector<double>& b)
{
    std::vector<double> both(a.size());
    std::transform(a.begin(), a.end(), b.begin(), both.begin(), std::multiplies<>());
    return both;
}

std::vector<double> normalised(std::vector<double> years)
{
    const double sum = std::accumulate(years.begin(), years.end(), 0.0);
    if (sum > 0)
        for (double& year : years)
            year /= sum;
    return years;
}

}  // namespace models
