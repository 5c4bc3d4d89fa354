#pragma once

#include <optional>
#include <string>

namespace cli {

struct YearSpan {
    std::optional<int> from, to;  // inclusive; nullopt is open
};

// "1940", "1938..1941", "1938..", "..1941". Throws UsageError for anything else, or years not in
// order.
YearSpan yearSpanFrom(const std::string& text);

}  // namespace cli
