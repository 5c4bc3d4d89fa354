#include "app/gui/filing_fields.h"

#include <algorithm>
#include <stdexcept>

#include "app/flow/item_facts.h"
#include "models/archive/archive.h"
#include "models/archive/standing.h"
#include "models/edtf.h"

namespace gui {

namespace {

// Stands in records, so it is not translated.
constexpr const char* none_of_them = "none of the known makers";

StampFacts factsOf(const models::StampRecord& stamp)
{
    return {stamp.part, stamp.place, stamp.method, stamp.ink_colour, stamp.later_added};
}

std::string keyOfStamp(const models::ItemRecord& item, const std::string& stamp_id)
{
    for (const models::StampRecord& stamp : item.stamps)
        if (!stamp_id.empty() && stamp.id == stamp_id)
            return stampKey(stamp);
    return {};
}

// Gives the stamp an id where it has none, so that others can name it.
std::string idOfStamp(models::ItemRecord& item, const std::string& key)
{
    for (models::StampRecord& stamp : item.stamps)
        if (!key.empty() && stampKey(stamp) == key) {
            if (stamp.id.empty())
                stamp.id = models::newRecordId();
            return stamp.id;
        }
    return {};
}

bool isSaid(const MeasurementField& field)
{
    return !field.what.empty() || !field.value.empty() || !field.how.empty();
}

}  // namespace

std::string stampKey(const models::StampRecord& stamp)
{
    return stamp.views.empty() ? stamp.id : stamp.views.front().id;
}

std::optional<models::MeasurementRecord> measurementOf(const MeasurementField& field)
{
    const auto length = flow::lengthFrom(field.value);
    if (!length || field.what.empty())
        return std::nullopt;
    models::MeasurementRecord record;
    record.id = field.id;
    record.what = field.what;
    record.value = length->value;
    record.unit = length->unit;
    record.how = field.how;
    return record;
}

std::optional<models::DatedEventRecord> eventOf(const EventField& field, models::ItemRecord& item)
{
    if (field.edtf.empty() || !models::whyNoYearBounds(field.edtf).empty())
        return std::nullopt;
    models::DatedEventRecord record = flow::datedEvent(field.kind, field.edtf);
    record.id = field.id;
    record.stamp_id = idOfStamp(item, field.stamp_id);
    return record;
}

FilingFields fieldsFromItem(const models::ItemRecord& item)
{
    FilingFields fields;
    fields.accession_number = item.accession_number;
    for (const ItemText& text : item_texts)
        fields.*text.said = item.*text.recorded;
    for (const models::StampRecord& stamp : item.stamps)
        if (factsOf(stamp) != StampFacts{})
            fields.stamps[stampKey(stamp)] = factsOf(stamp);
    for (const models::FeatureSeenRecord& feature : models::standingFeatures(item))
        fields.features[feature.feature_id] = {feature.seen, feature.notes};
    for (const models::MeasurementRecord& one : models::standingMeasurements(item))
        fields.measurements.push_back(
            {one.id, one.what, flow::lengthAsMeasured(one.value, one.unit), one.how});
    for (const models::DatedEventRecord& event : models::standingEvents(item))
        fields.events.push_back(
            {event.id, event.kind, event.edtf, keyOfStamp(item, event.stamp_id)});
    if (item.attributions.empty())
        return fields;
    const models::AttributionRecord& last = item.attributions.back();
    fields.maker_id = last.maker_id;
    fields.none_of_them = last.maker_id.empty() && last.maker_name == none_of_them;
    fields.maker_name = fields.none_of_them ? std::string() : last.maker_name;
    fields.mark = last.mark;
    fields.date_edtf = last.date_edtf;
    fields.certainty = last.certainty;
    fields.reasons = last.reasons;
    fields.engine_reasons = last.engine_reasons;
    fields.replaces = last.id;
    return fields;
}

void putStampFacts(models::StampRecord& stamp, const FilingFields& fields)
{
    const auto said = fields.stamps.find(stampKey(stamp));
    const StampFacts facts = said == fields.stamps.end() ? StampFacts{} : said->second;
    stamp.part = facts.part;
    stamp.place = facts.place;
    stamp.method = facts.method;
    stamp.ink_colour = facts.ink_colour;
    stamp.later_added = facts.later_added;
}

void putFields(models::ItemRecord& item, const FilingFields& fields)
{
    item.accession_number = fields.accession_number;
    for (const ItemText& text : item_texts)
        item.*text.recorded = fields.*text.said;
    for (models::StampRecord& stamp : item.stamps)
        putStampFacts(stamp, fields);
    item.features.clear();
    for (const auto& [id, field] : fields.features)
        if (field.seen)
            item.features.push_back({{}, id, *field.seen, field.notes, {}, {}});
    item.measurements.clear();
    for (const MeasurementField& field : fields.measurements)
        if (auto record = measurementOf(field))
            item.measurements.push_back(std::move(*record));
    item.dated_events.clear();
    for (const EventField& field : fields.events)
        if (auto record = eventOf(field, item))
            item.dated_events.push_back(std::move(*record));
}

std::optional<models::AttributionRecord> conclusionOf(const FilingFields& fields,
                                                      const std::string& register_sha256)
{
    if (fields.maker_id.empty() && fields.date_edtf.empty() && !fields.none_of_them)
        return std::nullopt;
    models::AttributionRecord attribution;
    attribution.maker_id = fields.maker_id;
    attribution.maker_name = fields.none_of_them ? none_of_them : fields.maker_name;
    attribution.mark = fields.mark;
    attribution.register_sha256 = register_sha256;
    attribution.date_edtf = fields.date_edtf;
    attribution.certainty = fields.certainty;
    attribution.reasons = fields.reasons;
    attribution.engine_reasons = fields.engine_reasons;
    attribution.supersedes = fields.replaces;
    return attribution;
}

bool concludesOtherwise(const FilingFields& fields, const FilingFields& before)
{
    return fields.maker_id != before.maker_id || fields.none_of_them != before.none_of_them ||
           fields.date_edtf != before.date_edtf || fields.certainty != before.certainty ||
           fields.reasons != before.reasons;
}

FactTrouble troubleIn(const FilingFields& fields)
{
    for (const MeasurementField& field : fields.measurements) {
        if (isSaid(field) && field.what.empty())
            return {FactTrouble::LengthOfNothing, field.value, {}};
        if (isSaid(field) && !flow::lengthFrom(field.value))
            return {FactTrouble::Length, field.what, field.value};
    }
    for (const EventField& field : fields.events)
        if (const std::string why = models::whyNoYearBounds(field.edtf); !why.empty())
            return {FactTrouble::Date, field.edtf, why};
    return {};
}

int fieldChanged(const FilingFields& from, const FilingFields& to)
{
    const std::pair<const std::string*, const std::string*> typed[] = {
        {&from.accession_number, &to.accession_number},
        {&from.owner, &to.owner},
        {&from.condition, &to.condition},
        {&from.place_found, &to.place_found},
        {&from.notes, &to.notes},
        {&from.date_edtf, &to.date_edtf},
        {&from.reasons, &to.reasons},
        {&from.why_changed, &to.why_changed}};
    int field = 0;
    for (const auto& [before, after] : typed) {
        if (*before != *after)
            return field;
        ++field;
    }
    if (from.type_id != to.type_id)
        return field;
    return from.maker_id != to.maker_id || from.none_of_them != to.none_of_them ? field + 1 : -1;
}

}  // namespace gui
