#include "app/flow/item_facts.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iomanip>
#include <sstream>
#include <stdexcept>
#include <variant>

#include "models/edtf.h"
#include "models/edtf_days.h"

namespace flow {

namespace {

constexpr double mm_per_inch = 25.4, longest = 100000;

std::string withoutBlanks(const std::string& text)
{
    const auto first = text.find_first_not_of(' ');
    return first == std::string::npos ? ""
                                      : text.substr(first, text.find_last_not_of(' ') - first + 1);
}

// "914", "2.25", "1/4", "2 1/4": a number, what follows it is cut off the text.
std::optional<double> takeNumber(std::string& text)
{
    const auto take = [&]() -> std::optional<double> {
        const auto end = text.find_first_not_of("0123456789.");
        const std::string digits = text.substr(0, end);
        if (digits.empty() || std::count(digits.begin(), digits.end(), '.') > 1 || digits == ".")
            return std::nullopt;
        text = end == std::string::npos ? "" : text.substr(end);
        return std::strtod(digits.c_str(), nullptr);
    };
    std::optional<double> value = take();
    if (!value)
        return std::nullopt;
    double whole = 0;
    if (text.size() > 1 && text[0] == ' ' && text[1] >= '0' && text[1] <= '9') {
        whole = *value;
        text.erase(0, 1);
        value = take();
        if (!value || text.empty() || text[0] != '/')
            return std::nullopt;
    }
    if (!text.empty() && text[0] == '/') {
        text.erase(0, 1);
        const std::optional<double> below = take();
        if (!below || *below <= 0)
            return std::nullopt;
        value = *value / *below;
    }
    return whole + *value;
}

std::string unitFrom(const std::string& typed)
{
    if (typed == "mm" || typed == "cm" || typed == "in")
        return typed;
    if (typed == "\"" || typed == "inch" || typed == "inches")
        return "in";
    return {};
}

// What an event of a kind says of the making. Accepted is the maker's date within weeks.
models::DateBound boundOfKind(models::EventKind kind)
{
    switch (kind) {
        case models::EventKind::Made:
            return models::DateBound::Exact;
        case models::EventKind::Contract:
        case models::EventKind::Pattern:
            return models::DateBound::NotBefore;
        case models::EventKind::Accepted:
        case models::EventKind::Inspected:
        case models::EventKind::Repaired:
        case models::EventKind::Issued:
        case models::EventKind::Disposed:
            break;
    }
    return models::DateBound::NotAfter;
}

std::string dayText(const models::EdtfLimit& limit)
{
    if (limit.kind != models::EdtfEnd::Kind::Date)
        return {};
    std::ostringstream text;
    text << std::setfill('0') << std::setw(4) << limit.day.year << "-" << std::setw(2)
         << limit.day.month << "-" << std::setw(2) << limit.day.day;
    return text.str();
}

// "36", "2 1/4" where sixteenths fit; else two decimals.
std::string inchesInWords(double inches)
{
    const long sixteenths = std::lround(inches * 16);
    std::ostringstream text;
    if (std::abs(static_cast<double>(sixteenths) / 16 - inches) > 0.01) {
        text << std::fixed << std::setprecision(2) << inches;
        return text.str();
    }
    long above = sixteenths % 16, below = 16;
    const long whole = sixteenths / 16;
    while (above > 0 && above % 2 == 0) {
        above /= 2;
        below /= 2;
    }
    if (whole > 0 || above == 0)
        text << whole;
    if (above > 0)
        text << (whole > 0 ? " " : "") << above << "/" << below;
    return text.str();
}

}  // namespace

std::optional<Length> lengthFrom(const std::string& typed)
{
    std::string rest = withoutBlanks(typed);
    const std::optional<double> value = takeNumber(rest);
    Length length{value.value_or(0), unitFrom(withoutBlanks(rest))};
    if (length.unit == "cm") {
        length.value *= 10;
        length.unit = "mm";
    }
    if (length.value <= 0 || length.value > longest || length.unit.empty())
        return std::nullopt;
    return length;
}

std::string lengthAsMeasured(double value, const std::string& unit)
{
    std::ostringstream text;
    if (unit == "in")
        text << inchesInWords(value);
    else
        text << value;
    text << " " << unit;
    return text.str();
}

std::string lengthInWords(double value, const std::string& unit)
{
    std::ostringstream text;
    text << lengthAsMeasured(value, unit);
    if (unit == "mm")
        text << " (" << inchesInWords(value / mm_per_inch) << " in)";
    else if (unit == "in")
        text << " (" << std::fixed << std::setprecision(1) << value * mm_per_inch << " mm)";
    return text.str();
}

models::DatedEventRecord datedEvent(models::EventKind kind, const std::string& edtf)
{
    if (const std::string why = models::whyNoYearBounds(edtf); !why.empty())
        throw std::invalid_argument("'" + edtf + "' is not a date in EDTF: " + why +
                                    "; write 1940, 1940?, 194X or 1938/1941");
    models::DatedEventRecord event;
    event.kind = kind;
    event.bound = boundOfKind(kind);
    event.edtf = event.printed = edtf;
    const auto parsed = models::parseEdtf(edtf);
    const models::EdtfDays days = models::daysOf(std::get<models::Edtf>(parsed));
    event.first_day = dayText(days.first);
    event.last_day = dayText(days.last);
    return event;
}

}  // namespace flow
