#pragma once

#include <string>
#include <vector>

#include "models/year_weights.h"

// Sums over years as vectors, one number a year of a range: periods with soft limits, and what
// happened some time before or after.
namespace models {

// A year's weight falls off beyond a limit by exp(-years / this); 0 would be a sharp limit.
// Common practice, no source: things are given up more slowly than begun.
struct LimitSoftness {
    double before = 0, after = 0;  // years, of a limit as it stands
    // Where the limit is qualified by ?, ~ or %: a few years off are what "about" says, five are
    // not.
    double before_about = 0, after_about = 0;
};

// How well each year of the range suits limits in EDTF: 1 within, falling off beyond; an empty or
// open limit bounds nothing.
std::vector<double> periodWeights(const std::string& from, const std::string& to,
                                  const YearRange& range, const LimitSoftness& softness);

inline constexpr LimitSoftness usual_softness = {0.6, 0.9, 1, 1.2};
inline constexpr LimitSoftness wrong_softness = {6, 6, 8, 8};  // where a register is mistaken

// Is there a limit on either side?
bool hasLimit(const std::string& from, const std::string& to);

// Spreads years to those some time later (or earlier): the share `fading`^n of what remains after n
// years, (1 - fading) of it in the year itself.
std::vector<double> yearsAfter(const std::vector<double>& years, double fading);
std::vector<double> yearsBefore(const std::vector<double>& years, double fading);

// Scaled to sum 1; all zero stays so.
std::vector<double> summingToOne(std::vector<double> years);

// The same probability for each year.
std::vector<double> anyYear(const YearRange& range);

std::vector<double> scaledYears(double factor, std::vector<double> years);

// share_a of the one and share_b of the other, year by year.
std::vector<double> mixedYears(const std::vector<double>& a, double share_a,
                               const std::vector<double>& b, double share_b);

}  // namespace models
