#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "models/maker_register.h"

// What a register's years say of a single year, as weights.
namespace models {

// The years that a ranking looks at, both included.
struct YearRange {
    int first = 1850, last = 1980;

    std::size_t size() const { return static_cast<std::size_t>(last - first + 1); }
};

// All years that a register speaks of and ten more on either side, which only dates reach; 1850 to
// 1980 when it names none.
YearRange yearsOf(const MakerRegister& known);

// Those of them in which marks on items of this type can be dated: five years before it was
// introduced (a pattern's year) to five after it was withdrawn (old stock, inspections). Not in
// order where the register contradicts itself.
YearRange yearsOf(const ItemType& type, const YearRange& of_register);

// How well each year of `range` suits limits written in EDTF (empty or open: the first or last year
// that the register speaks of, roughly): 1 within them,
// falling off beyond, since approval is not first delivery and old stock is used up; slower where a
// limit is qualified. Never 0, since a register can be wrong.
std::vector<double> softYears(const std::string& from, const std::string& to,
                              const YearRange& range);

// Does a year lie within limits written in EDTF? An end that is empty or not understood is open.
bool liesWithin(int year, const std::string& from, const std::string& to);

// "1924 to 1946", "until 1946", "from about 1924"; empty when nothing is known.
std::string yearsInWords(const std::string& from, const std::string& to);

}  // namespace models
