#include "models/edtf.h"
#include "models/edtf_days.h"

namespace models {

namespace {

bool hasDoubt(const EdtfEnd& end)
{
    const EdtfDate& date = end.date;
    return date.year.doubt != EdtfDoubt::None ||
           (date.month && date.month->doubt != EdtfDoubt::None) ||
           (date.day && date.day->doubt != EdtfDoubt::None);
}

// The year of a limit; nullopt also where it has none. `fits` becomes false for a year that marks
// and registers cannot have.
std::optional<int> yearOf(const EdtfLimit& limit, bool& fits)
{
    if (limit.kind != EdtfEnd::Kind::Date)
        return std::nullopt;
    fits = fits && limit.day.year >= 0 && limit.day.year <= 9999;
    return static_cast<int>(limit.day.year);
}

}  // namespace

std::optional<YearBounds> edtfYearBounds(const std::string& edtf)
{
    const auto parsed = parseEdtf(edtf);
    if (!std::holds_alternative<Edtf>(parsed))
        return std::nullopt;
    const Edtf& value = std::get<Edtf>(parsed);
    const EdtfDays days = daysOf(value);
    bool fits = true;
    YearBounds bounds{yearOf(days.first, fits), yearOf(days.last, fits), false};
    if (!fits || (!bounds.first && !bounds.last))
        return std::nullopt;
    for (const EdtfMember& member : value.members)
        bounds.soft = bounds.soft || hasDoubt(member.from) || (member.to && hasDoubt(*member.to));
    return bounds;
}

std::string whyNoYearBounds(const std::string& edtf)
{
    const auto parsed = parseEdtf(edtf);
    if (const auto* fault = std::get_if<EdtfFault>(&parsed))
        return "at character " + std::to_string(fault->position + 1) + " should stand " +
               fault->expected;
    return edtfYearBounds(edtf) ? "" : "its years should be 0 to 9999";
}

}  // namespace models
