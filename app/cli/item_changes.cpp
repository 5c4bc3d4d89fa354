#include "app/cli/item_changes.h"

#include "app/cli/command_line.h"
#include "app/cli/item_facts.h"
#include "app/cli/item_types.h"
#include "app/cli/typed_text.h"
#include "models/archive/archive.h"
#include "models/archive/record_names.h"

namespace cli {

namespace {

// The value for the i-th stamp: its own, or the only one given for all.
std::string forStamp(const std::vector<std::string>& values, std::size_t i, std::size_t stamps,
                     const char* option)
{
    if (values.empty())
        return {};
    if (values.size() == 1)
        return values.front();
    if (values.size() != stamps)
        throw UsageError(std::string(option) +
                         " is given once for all stamps, or once for each --stamp in turn");
    return values[i];
}

models::StampRecord stampRecordFrom(const ItemOptions& options, std::size_t i,
                                    const ItemContext& context)
{
    const std::size_t count = options.stamps.size();
    models::ReadingRecord record;
    record.reading.reader = context.by;
    record.reading.basis = models::Basis::ObjectInHand;
    record.reading.read_at = context.now;
    record.reading.lines = linesFromTyped(options.stamps[i]);
    for (models::Line& line : record.reading.lines)
        for (models::Cell& cell : line.cells)
            cell.by = context.by;
    models::StampRecord stamp;
    const std::string part = forStamp(options.parts, i, count, "--part");
    const std::string method = forStamp(options.methods, i, count, "--method");
    stamp.part = part.empty() ? models::StampPart::Unknown : partFrom(part);
    stamp.method = method.empty() ? models::StampMethod::Unknown : methodFrom(method);
    stamp.place = forStamp(options.places, i, count, "--on");
    stamp.ink_colour = forStamp(options.inks, i, count, "--ink");
    stamp.later_added = options.later_added;
    stamp.readings = {record};
    return stamp;
}

models::DatedEventRecord eventRecordFrom(const std::string& typed,
                                         const std::vector<models::StampRecord>& stamps)
{
    TypedEvent event = eventFrom(typed);
    if (event.stamp && *event.stamp > stamps.size())
        throw UsageError("the item has " + std::to_string(stamps.size()) + " stamps, so that '" +
                         typed + "' names none of them");
    if (event.stamp)
        event.event.stamp_id = stamps[*event.stamp - 1].id;
    return event.event;
}

std::optional<models::AttributionRecord> attributionFrom(const ItemOptions& options,
                                                         const models::ItemRecord& item,
                                                         const ItemContext& context)
{
    if (!options.conclusion.concludes())
        return std::nullopt;
    models::AttributionRecord attribution =
        conclusionFrom(options.conclusion, context.known, context.register_folder, {});
    if (options.replaces) {
        if (*options.replaces < 1 || *options.replaces > item.attributions.size())
            throw UsageError("there is no conclusion number " + std::to_string(*options.replaces) +
                             " to replace; show lists them");
        attribution.supersedes = item.attributions[*options.replaces - 1].id;
    }
    return attribution;
}

// "measurement:2=the tape had shrunk"
models::CorrectionRecord takingBack(const std::string& typed, const models::ItemRecord& item)
{
    const auto colon = typed.find(':'), equals = typed.find('=');
    const std::string refusal = "'" + typed +
                                "' takes nothing back; write feature:N=WHY, measurement:N=WHY or "
                                "event:N=WHY, counted as show lists them";
    if (colon == std::string::npos || equals == std::string::npos || equals < colon)
        throw UsageError(refusal);
    const std::string what = typed.substr(0, colon);
    const std::string number = typed.substr(colon + 1, equals - colon - 1);
    if (number.empty() || number.size() > 4 ||
        number.find_first_not_of("0123456789") != std::string::npos)
        throw UsageError(refusal);
    const auto at = static_cast<std::size_t>(std::stoi(number));
    models::CorrectionRecord correction;
    correction.field = "withdrawn";
    correction.value = typed.substr(equals + 1);
    const auto pick = [&](const char* about, const auto& records) {
        if (at < 1 || at > records.size())
            throw UsageError("there is no " + what + " number " + number +
                             " on this item; show lists them");
        correction.about = about;
        correction.about_id = records[at - 1].id;
    };
    if (what == "feature")
        pick("feature_seen", item.features);
    else if (what == "measurement")
        pick("measurement", item.measurements);
    else if (what == "event")
        pick("dated_event", item.dated_events);
    else
        throw UsageError(refusal);
    return correction;
}

models::CorrectionRecord correctionOf(const std::string& about, const std::string& id,
                                      const std::string& field, const std::string& value)
{
    models::CorrectionRecord correction;
    correction.about = about;
    correction.about_id = id;
    correction.field = field;
    correction.value = value;
    return correction;
}

std::vector<models::CorrectionRecord> stampCorrectionsFrom(const ItemOptions& options,
                                                           const models::ItemRecord& item)
{
    if (!options.stamp_number)
        return {};
    if (*options.stamp_number < 1 || *options.stamp_number > item.stamps.size())
        throw UsageError("the item has no stamp number " + std::to_string(*options.stamp_number) +
                         "; show lists them");
    if (!options.stamps.empty())
        throw UsageError(
            "--stamp-number corrects a filed stamp and --stamp adds one; do one after "
            "the other");
    const std::string& id = item.stamps[*options.stamp_number - 1].id;
    std::vector<models::CorrectionRecord> corrections;
    const auto add = [&](const char* field, const std::string& value) {
        corrections.push_back(correctionOf("stamp", id, field, value));
    };
    if (!options.parts.empty())
        add("part", models::nameOf(partFrom(options.parts.front())));
    if (!options.methods.empty())
        add("method", models::nameOf(methodFrom(options.methods.front())));
    if (!options.places.empty())
        add("place", options.places.front());
    if (!options.inks.empty())
        add("ink_colour", options.inks.front());
    if (options.later_added)
        add("later_added", "1");
    return corrections;
}

std::vector<models::CorrectionRecord> correctionsFrom(const ItemOptions& options,
                                                      const models::ItemRecord& item)
{
    std::vector<models::CorrectionRecord> corrections = stampCorrectionsFrom(options, item);
    const auto of_item = [&](const std::optional<std::string>& given, const char* field,
                             const std::string& now) {
        if (given && *given != now)
            corrections.push_back(correctionOf("item", item.id, field, *given));
    };
    of_item(options.type_id, "type_id", item.type_id);
    of_item(options.owner, "owner", item.owner);
    of_item(options.condition, "condition", item.condition);
    of_item(options.place_found, "place_found", item.place_found);
    of_item(options.notes, "notes", item.notes);
    for (const std::string& typed : options.taken_back)
        corrections.push_back(takingBack(typed, item));
    return corrections;
}

void checkStampOptions(const ItemOptions& options)
{
    const bool about_stamps = !options.parts.empty() || !options.places.empty() ||
                              !options.methods.empty() || !options.inks.empty() ||
                              options.later_added;
    if (about_stamps && options.stamps.empty() && !options.stamp_number)
        throw UsageError(
            "--part, --on, --method, --ink and --later-added say something of a "
            "stamp; give a --stamp, or --stamp-number for one that is filed");
}

}  // namespace

void checkItemOptions(const ItemOptions& options, const models::MakerRegister& known)
{
    if (options.type_id)
        requireItemType(*options.type_id, known);
    checkConclusion(options.conclusion, known);
    if (options.replaces && !options.conclusion.concludes())
        throw UsageError("--replaces belongs to a conclusion; give --maker or --date");
    if (options.item.empty() && (options.stamp_number || !options.taken_back.empty()))
        throw UsageError("--stamp-number and --take-back speak of an item that is filed; name it");
    if (!options.item.empty() && !options.accession_number.empty())
        throw UsageError("an accession number stays as it was given; leave --accession out");
    checkStampOptions(options);
    for (const std::string& typed : options.features) {
        const std::string id = featureFrom(typed).feature_id;
        if (!known.feature(id))
            throw UsageError("the register has no feature '" + id +
                             "'; look its id up with register list features");
    }
}

models::RecordAdditions additionsFrom(const ItemOptions& options, const models::ItemRecord& item,
                                      const ItemContext& context)
{
    models::RecordAdditions additions;
    std::vector<models::StampRecord> stamps = item.stamps;
    for (std::size_t i = 0; i < options.stamps.size(); ++i) {
        additions.stamps.push_back(stampRecordFrom(options, i, context));
        additions.stamps.back().id = models::newRecordId();
        stamps.push_back(additions.stamps.back());
    }
    for (const std::string& typed : options.features)
        additions.features.push_back(featureFrom(typed));
    for (const std::string& typed : options.measurements)
        additions.measurements.push_back(measurementFrom(typed));
    for (const std::string& typed : options.events)
        additions.dated_events.push_back(eventRecordFrom(typed, stamps));
    if (const auto conclusion = attributionFrom(options, item, context))
        additions.attributions.push_back(*conclusion);
    if (!item.id.empty())
        additions.corrections = correctionsFrom(options, item);
    return additions;
}

}  // namespace cli
