#include "app/cli/outline.h"

#include <charconv>
#include <cmath>
#include <stdexcept>
#include <vector>

#include "app/cli/command_line.h"

namespace cli {

namespace {

std::vector<float> numbersFrom(const std::string& text)
{
    std::vector<float> numbers;
    const char* at = text.data();
    const char* const end = at + text.size();
    while (at <= end) {
        float number = 0;
        const auto [stopped, trouble] = std::from_chars(at, end, number);
        if (trouble != std::errc{} || !std::isfinite(number))
            return {};
        numbers.push_back(number);
        if (stopped == end)
            return numbers;
        if (*stopped != ',')
            return {};
        at = stopped + 1;
    }
    return {};
}

}  // namespace

vision::Quad outlineFrom(const std::string& text)
{
    const std::vector<float> numbers = numbersFrom(text);
    if (numbers.size() != 8)
        throw UsageError("'" + text +
                         "' is not an outline; write eight numbers x,y,x,y,x,y,x,y without spaces");
    vision::Quad corners;
    for (std::size_t i = 0; i < 4; ++i)
        corners[i] = {numbers[2 * i], numbers[2 * i + 1]};
    try {
        vision::outlineFromCorners(corners);
    } catch (const std::invalid_argument&) {
        throw UsageError("the outline " + text +
                         " is not a convex shape of some size; give its corners clockwise from the "
                         "stamp's own top left");
    }
    return corners;
}

}  // namespace cli
