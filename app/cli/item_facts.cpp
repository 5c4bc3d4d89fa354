#include "app/cli/item_facts.h"

#include <stdexcept>

#include "app/cli/command_line.h"
#include "app/flow/item_facts.h"
#include "models/archive/record_names.h"

namespace cli {

namespace {

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

std::size_t stampNumberFrom(const std::string& typed, const std::string& whole)
{
    const std::string number = typed.rfind("stamp ", 0) == 0 ? typed.substr(6) : "";
    if (number.empty() || number.size() > 3 ||
        number.find_first_not_of("0123456789") != std::string::npos || std::stoi(number) < 1)
        throw UsageError("'" + whole +
                         "' names no stamp; write for example inspected=1943, stamp 2");
    return static_cast<std::size_t>(std::stoi(number));
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
    const std::optional<flow::Length> length = flow::lengthFrom(rest);
    if (!length)
        throw UsageError(refusal);
    record.value = length->value;
    record.unit = length->unit;
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
    try {
        result.event = flow::datedEvent(*kind, halves->behind);
    } catch (const std::invalid_argument& error) {
        throw UsageError(error.what());
    }
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

}  // namespace cli
