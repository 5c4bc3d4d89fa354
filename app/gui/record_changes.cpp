// From what is said of a filed item now to what is added to its record.
#include <algorithm>

#include "app/gui/filing_fields.h"
#include "models/archive/record_names.h"
#include "models/archive/standing.h"

namespace gui {

namespace {

using models::CorrectionRecord;
using models::RecordAdditions;

void correct(RecordAdditions& changes, const char* about, const std::string& id, const char* field,
             const std::string& value)
{
    CorrectionRecord correction;
    correction.about = about;
    correction.about_id = id;
    correction.field = field;
    correction.value = value;
    changes.corrections.push_back(std::move(correction));
}

// What the reader of the record finds beside a fact that does not hold any more.
std::string reasonOf(const FilingFields& fields, const char* otherwise)
{
    return fields.why_changed.empty() ? otherwise : fields.why_changed;
}

void changeItem(RecordAdditions& changes, const FilingFields& now, const models::ItemRecord& item)
{
    for (const ItemText& text : item_texts)
        if (item.*text.recorded != now.*text.said)
            correct(changes, "item", item.id, text.name, now.*text.said);
}

void changeStamps(RecordAdditions& changes, const FilingFields& now, const models::ItemRecord& item)
{
    for (const models::StampRecord& stamp : item.stamps) {
        const auto said = now.stamps.find(stampKey(stamp));
        const StampFacts is = said == now.stamps.end() ? StampFacts{} : said->second;
        const auto change = [&, id = stamp.id](const char* field, const std::string& value) {
            correct(changes, "stamp", id, field, value);
        };
        if (is.part != stamp.part)
            change("part", models::nameOf(is.part));
        if (is.method != stamp.method)
            change("method", models::nameOf(is.method));
        if (is.place != stamp.place)
            change("place", is.place);
        if (is.ink_colour != stamp.ink_colour)
            change("ink_colour", is.ink_colour);
        if (is.later_added != stamp.later_added)
            change("later_added", is.later_added ? "1" : "0");
    }
}

void changeFeatures(RecordAdditions& changes, const FilingFields& now,
                    const models::ItemRecord& item)
{
    const FilingFields was = fieldsFromItem(item);
    for (const auto& [id, field] : now.features) {
        const auto before = was.features.find(id);
        if (field.seen && (before == was.features.end() || before->second != field))
            changes.features.push_back({{}, id, *field.seen, field.notes, {}, {}});
    }
    for (const models::FeatureSeenRecord& seen : item.features) {
        const auto field = now.features.find(seen.feature_id);
        const bool is_said = field != now.features.end() && field->second.seen;
        if (!is_said && was.features.count(seen.feature_id))
            correct(changes, "feature_seen", seen.id, "withdrawn", reasonOf(now, "not looked at"));
    }
}

// Facts with ids of their own: what was filed and is not said so any more is taken back, what is
// new is added.
template <typename Field, typename Add>
void changeFacts(RecordAdditions& changes, const char* about, const FilingFields& now,
                 const std::vector<Field>& was, const std::vector<Field>& is, const Add& add)
{
    for (const Field& field : was) {
        const auto same = std::find_if(is.begin(), is.end(),
                                       [&](const Field& one) { return one.id == field.id; });
        if (same == is.end() || !(*same == field))
            correct(changes, about, field.id, "withdrawn",
                    reasonOf(now, same == is.end() ? "taken out" : "written anew"));
    }
    for (Field field : is) {
        const bool stands = std::find(was.begin(), was.end(), field) != was.end();
        field.id.clear();
        if (!stands)
            add(field);
    }
}

}  // namespace

RecordAdditions changesOf(const FilingFields& now, const models::ItemRecord& item,
                          const std::string& register_sha256)
{
    RecordAdditions changes;
    const FilingFields was = fieldsFromItem(item);
    changeItem(changes, now, item);
    changeStamps(changes, now, item);
    changeFeatures(changes, now, item);
    models::ItemRecord named = item;  // every stamp of it has its id
    changeFacts(changes, "measurement", now, was.measurements, now.measurements,
                [&](const MeasurementField& field) {
                    if (auto record = measurementOf(field))
                        changes.measurements.push_back(std::move(*record));
                });
    changeFacts(changes, "dated_event", now, was.events, now.events, [&](const EventField& field) {
        if (auto record = eventOf(field, named))
            changes.dated_events.push_back(std::move(*record));
    });
    if (concludesOtherwise(now, was))
        if (auto attribution = conclusionOf(now, register_sha256))
            changes.attributions.push_back(std::move(*attribution));
    return changes;
}

}  // namespace gui
