#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "models/edtf_days.h"

namespace models {

// Sides of runs that have no first or no last day.
constexpr CalendarDay no_first_day{std::numeric_limits<std::int64_t>::min(), 1, 1};
constexpr CalendarDay no_last_day{std::numeric_limits<std::int64_t>::max(), 12, 31};

struct DayRun {
    CalendarDay first, last;  // both are in it

    bool operator==(const DayRun&) const = default;
};

// A set of calendar days as runs from the earliest on, with at least a day between two of them, so
// that equal sets have equal runs. The functions here give such sets; a set that is put together by
// hand goes through setOfRuns first.
struct DaySet {
    std::vector<DayRun> runs;

    bool operator==(const DaySet&) const = default;
    bool empty() const { return runs.empty(); }
    bool contains(const CalendarDay& day) const;
};

// Runs in any order, overlapping or touching; those that end before they begin are left out.
DaySet setOfRuns(std::vector<DayRun> runs);

// Whole years, in any order.
DaySet setOfYears(const std::vector<std::int64_t>& years);

// Every day that the value could be (as couldBe tells); open and unknown ends have no last day.
DaySet setOf(const Edtf& edtf);

DaySet intersectionOf(const DaySet& a, const DaySet& b);
DaySet unionOf(const DaySet& a, const DaySet& b);

// What a run of several years, months or days is: a time that lasts from the first to the last
// (1940/1942), or one date among them that is not known better ([1940..1942]).
enum class RunMeans { Interval, OneDate };

// The simplest EDTF text that is just these days: one date where one will do (1940, 1940-03,
// 1940-03-05), X where whole years fill a mask (194X, 19XX, 19X0), a run as it is meant
// (1940/1942, ../1940; as one date [1940..1942], [..1940]), else one of a set ([1940,1946],
// [1931,1938..1940]). Each run is written by years, months or days, whatever is coarsest. nullopt
// for what EDTF cannot write: the empty set, and years of more than four digits of which only some
// days are in the set.
std::optional<std::string> simplestForm(const DaySet& days,
                                        RunMeans run_means = RunMeans::Interval);

}  // namespace models
