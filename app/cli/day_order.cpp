#include "app/cli/day_order.h"

#include "app/cli/command_line.h"

namespace cli {

models::DayOrder dayOrderFrom(const std::string& word)
{
    if (word.empty())
        return models::DayOrder::Unknown;
    if (word == "day")
        return models::DayOrder::DayFirst;
    if (word == "month")
        return models::DayOrder::MonthFirst;
    throw UsageError("--day-order is '" + word + "'; write day or month");
}

}  // namespace cli
