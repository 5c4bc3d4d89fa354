#pragma once

#include <optional>
#include <string>
#include <vector>

namespace models {

// First and last year an EDTF (ISO 8601-2) string allows; nullopt on an open or unknown side.
struct YearBounds {
    std::optional<int> first, last;
    bool soft = false;  // qualified by ?, ~ or %: the limits are not sharp

    bool operator==(const YearBounds&) const = default;
};

// Years of the EDTF forms used on marks and in the register: a year, a year and month (or quarter),
// a full date, unread digits (194X, 19X0), qualifiers, intervals (1938/1940, ../1940, 1940/..) and
// sets ([1940,1946], [1938..1940]). Anything else gives nullopt.
std::optional<YearBounds> edtfYearBounds(const std::string& edtf);

// The simplest EDTF string for a set of years: "1940", "[1938..1940]", "[1940,1946]", "194X" only
// when all ten years of the decade are in the set. Years must be 0 to 9999; order and repeats do
// not matter; an empty set gives an empty string.
std::string simplestEdtf(std::vector<int> years);

}  // namespace models
