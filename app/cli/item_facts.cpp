#include "app/cli/item_facts.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iomanip>
#include <sstream>

#include "app/cli/command_line.h"
#include "models/archive/record_names.h"
#include "models/edtf.h"
#include "models/edtf_days.h"

namespace cli {

namespace {

constexpr double mm_per_inch = 25.4;  // exactly, by the international agreement of 1959

std::string trimmed(const std::string& text)
{
    const auto first = text.find_first_not_of(' ');
    return first == std::string::npos ? ""
                                      : text.substr(first, text.find_last_not_of(' ') - first + 1);
}

// Before and behind the first `sign`; nothing where it is missing.
struct Halves {
    std::string before, behind;
};

std::optional<Halves> halvesOf(const std::string& text, char sign)
{
    const auto at = text.find(sign);
    if (at == std::string::npos)
        return std::nullopt;
    return Halves{trimmed(text.substr(0, at)), trimmed(text.substr(at + 1))};
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

std::size_t stampNumberFrom(const std::string& typed, const std::string& whole)
{
    const std::string number = typed.rfind("stamp ", 0) == 0 ? typed.substr(6) : "";
    if (number.empty() || number.size() > 3 ||
        number.find_first_not_of("0123456789") != std::string::npos || std::stoi(number) < 1)
        throw UsageError("'" + whole +
                         "' names no stamp; write for example inspected=1943, stamp 2");
    return static_cast<std::size_t>(std::stoi(number));
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

models::FeatureSeenRecord featureFrom(const std::string& typed)
{
    const std::optional<Halves> halves = halvesOf(typed, '=');
    models::FeatureSeenRecord record;
    if (halves) {
        record.feature_id = halves->before;
        if (halves->behind == "hidden")
            record.seen = models::FeatureSeen::CannotBeSeen;
        else if (halves->behind == "altered")
            record.seen = models::FeatureSeen::AlteredLater;
        else if (const auto seen = models::featureSeenNamed(halves->behind))
            record.seen = *seen;
        else
            record.feature_id.clear();
    }
    if (record.feature_id.empty())
        throw UsageError("'" + typed +
                         "' is no feature; write FEATURE=present, =absent, =hidden or =altered");
    return record;
}

models::MeasurementRecord measurementFrom(const std::string& typed)
{
    const std::optional<Halves> halves = halvesOf(typed, '=');
    const std::string refusal = "'" + typed +
                                "' is no measurement; write for example length=914 mm, or "
                                "width=2 1/4 in, tape";
    if (!halves || halves->before.empty())
        throw UsageError(refusal);
    std::string rest = halves->behind;
    models::MeasurementRecord record;
    record.what = halves->before;
    if (const std::optional<Halves> how = halvesOf(rest, ',')) {
        record.how = how->behind;
        rest = how->before;
    }
    const std::optional<double> value = takeNumber(rest);
    record.unit = unitFrom(trimmed(rest));
    if (!value || *value <= 0 || *value > 100000 || record.unit.empty())
        throw UsageError(refusal);
    record.value = *value;
    if (record.unit == "cm") {
        record.value *= 10;
        record.unit = "mm";
    }
    return record;
}

TypedEvent eventFrom(const std::string& typed)
{
    std::string text = typed;
    TypedEvent result;
    const auto comma = typed.rfind(", ");  // an EDTF set has no blank behind its commas
    if (comma != std::string::npos) {
        result.stamp = stampNumberFrom(trimmed(typed.substr(comma + 1)), typed);
        text = typed.substr(0, comma);
    }
    const std::optional<Halves> halves = halvesOf(text, '=');
    const auto kind = halves ? models::eventKindNamed(halves->before) : std::nullopt;
    if (!kind)
        throw UsageError("'" + typed +
                         "' is no event; write KIND=DATE, the kind made, contract, accepted, "
                         "inspected, repaired, issued, pattern or disposed");
    if (const std::string why = models::whyNoYearBounds(halves->behind); !why.empty())
        throw UsageError("'" + halves->behind + "' is not a date in EDTF: " + why +
                         "; write 1940, 1940?, 194X or 1938/1941");
    result.event.kind = *kind;
    result.event.bound = boundOfKind(*kind);
    result.event.edtf = result.event.printed = halves->behind;
    const auto parsed = models::parseEdtf(halves->behind);
    const models::EdtfDays days = models::daysOf(std::get<models::Edtf>(parsed));
    result.event.first_day = dayText(days.first);
    result.event.last_day = dayText(days.last);
    return result;
}

models::StampPart partFrom(const std::string& typed)
{
    if (const auto part = models::stampPartNamed(typed))
        return *part;
    throw UsageError("'" + typed +
                     "' is no part; write body, fitting, lining, replacement or unknown");
}

models::StampMethod methodFrom(const std::string& typed)
{
    if (const auto method = models::stampMethodNamed(typed))
        return *method;
    throw UsageError("'" + typed +
                     "' is no method; write ink, stencil, impressed, woven, label, cast, engraved, "
                     "painted or unknown");
}

models::Certainty certaintyWordFrom(const std::string& typed)
{
    if (typed.empty())
        return models::Certainty::Possible;
    if (const auto certainty = models::certaintyNamed(typed))
        return *certainty;
    throw UsageError("'" + typed +
                     "' is no word of certainty; write certain, probable or possible");
}

std::string lengthInWords(double value, const std::string& unit)
{
    std::ostringstream text;
    if (unit == "mm")
        text << value << " mm (" << inchesInWords(value / mm_per_inch) << " in)";
    else if (unit == "in")
        text << inchesInWords(value) << " in (" << std::fixed << std::setprecision(1)
             << value * mm_per_inch << " mm)";
    else
        text << value << " " << unit;
    return text.str();
}

}  // namespace cli
