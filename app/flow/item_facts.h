#pragma once

#include <optional>
#include <string>

#include "models/archive/records.h"

// Facts of an item as a person writes them; the command line and the window both take them so.
namespace flow {

struct Length {
    double value = 0;  // over 0, at most 100,000
    std::string unit;  // "mm" or "in"
};

// "914 mm", "91.4 cm" (kept as mm), "2 1/4 in", "2.25\"", "1/4 inch"; nothing where it is no
// length.
std::optional<Length> lengthFrom(const std::string& typed);

// "914.4 mm (36 in)": the value as it was measured, and in the other unit, inches in sixteenths
// where that is exact to a hundredth, else with two decimals. 25.4 mm are an inch, exactly (the
// international yard and pound agreement of 1959).
std::string lengthInWords(double value, const std::string& unit);

// The same without the other unit, as lengthFrom takes it: "914.4 mm", "2 1/4 in".
std::string lengthAsMeasured(double value, const std::string& unit);

// An event of which somebody wrote the date; the bound that it sets goes by its kind.
// Throws std::invalid_argument, a sentence with the remedy, for a date that is not EDTF.
models::DatedEventRecord datedEvent(models::EventKind kind, const std::string& edtf);

}  // namespace flow
