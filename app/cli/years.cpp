#include "app/cli/years.h"

#include <algorithm>
#include <cctype>

#include "app/cli/command_line.h"

namespace cli {

namespace {

[[noreturn]] void refuse(const std::string& text)
{
    throw UsageError("'" + text +
                     "' are no years; write 1940, or 1938..1941 with the earlier first");
}

std::optional<int> yearFrom(const std::string& digits, const std::string& text)
{
    if (digits.empty())
        return std::nullopt;
    const bool is_year = digits.size() == 4 &&
                         std::all_of(digits.begin(), digits.end(),
                                     [](unsigned char digit) { return std::isdigit(digit) != 0; });
    if (!is_year)
        refuse(text);
    return std::stoi(digits);
}

}  // namespace

YearSpan yearSpanFrom(const std::string& text)
{
    const std::string::size_type dots = text.find("..");
    YearSpan span;
    span.from = yearFrom(text.substr(0, dots), text);
    span.to = dots == std::string::npos ? span.from : yearFrom(text.substr(dots + 2), text);
    const bool is_empty = !span.from && !span.to;
    if (is_empty || (span.from && span.to && *span.from > *span.to))
        refuse(text);
    return span;
}

}  // namespace cli
