#pragma once

#include <array>
#include <vector>

#include "models/production_change.h"

// P(what was seen on each item | a change at a time), as production_change.h models it.
namespace models {

// What a change looks like beside its time: one cell of the sums.
struct ChangeShape {
    ChangeDirection direction = ChangeDirection::Introduced;
    double overlap_years = 0, other_state = 0;  // rate of items that show the other state
};

const std::vector<ChangeShape>& changeShapes();

// The share of a year's items (the year from `year` to `year` + 1) with the new state, where it
// grows along a line of `overlap_years` about `middle`; 0 to 1.
double newShare(int year, double middle, double overlap_years);

// Log likelihoods of all items, by shape and step of time, and without a change.
struct ChangeLikelihood {
    std::vector<std::vector<double>> by_shape;  // [shape][step]
    double none = 0;
};

class ChangeGrid {
public:
    ChangeGrid(const YearRange& range, int steps_a_year);

    std::size_t steps() const { return steps_; }
    double middleOf(std::size_t step) const;  // in years
    ChangeLikelihood likelihoodOf(const std::vector<const ChangeItem*>& items) const;

private:
    YearRange range_;
    int steps_a_year_;
    std::size_t steps_;
    std::vector<std::vector<std::vector<double>>> shares_;  // [overlap][step][year]
};

}  // namespace models
