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

// Years of the EDTF forms used on marks and in the register: a year, a year and month (or a season,
// quarter, third or half, 21 to 41), a full date that exists, unread digits in any place (194X,
// 19X0, 1940-1X, 194X-02-29), qualifiers behind the whole or beside a part (1940?, 1940-?03),
// intervals (1938/1940, ../1940, 1940/..) and sets ([1940,1946], [1938..1940], [..1940],
// {1940,1942}; the hull of their members). Anything else gives nullopt, such as times of day, years
// beyond four digits, an interval or a run that ends before it begins, and an interval without a
// single year.
std::optional<YearBounds> edtfYearBounds(const std::string& edtf);

// The simplest EDTF string for a set of years: "1940", "[1938..1940]", "[1940,1946]"; "194X" when
// the set is just the ten years of a decade, "19XX" for a century. Order and repeats do not matter;
// an empty set gives an empty string. Throws std::invalid_argument for a year outside 0 to 9999.
std::string simplestEdtf(std::vector<int> years);

}  // namespace models
