#pragma once

#include <string>

#include "models/date_mark.h"

namespace cli {

inline constexpr const char* day_order_help =
    "Which comes first in a date in figures such as 3/4/40: day or month; else both are thought of";

// "day", "month", or empty where it is not known. Throws UsageError for anything else.
models::DayOrder dayOrderFrom(const std::string& word);

}  // namespace cli
