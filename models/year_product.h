#pragma once

#include <vector>

namespace models {

// A product of many factors by year, kept in range: the odds of a few dozen clear stamps multiplied
// pass what a double can hold.
class YearProduct {
public:
    explicit YearProduct(std::vector<double> first);

    // Factors of 0 or more, one a year; not all of them 0 where the product is not.
    void multiply(const std::vector<double>& factors);

    // Natural logarithm of the sum over years of weight x product.
    double logSum(const std::vector<double>& weights) const;
    // Of the sum over years of the product.
    double logSum() const;

    // The product by year on a scale of its own: the largest is 1.
    const std::vector<double>& values() const { return values_; }
    double logScale() const { return log_scale_; }  // of values(): log of what they were divided by

private:
    void rescale();

    std::vector<double> values_;
    double log_scale_ = 0;
};

// The sum over years of a x b.
double productSum(const std::vector<double>& a, const std::vector<double>& b);

// Factors by year, one by one.
std::vector<double> product(const std::vector<double>& a, const std::vector<double>& b);
// Shares that sum to 1, where the sum is not 0.
std::vector<double> normalised(std::vector<double> years);

}  // namespace models
