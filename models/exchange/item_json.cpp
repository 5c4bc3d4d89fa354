#include "models/exchange/item_json.h"

#include <nlohmann/json.hpp>

#include "models/archive/record_names.h"
#include "models/exchange/reading_json.h"

namespace models {

namespace {

using Json = nlohmann::ordered_json;

// Adds who recorded it and when, which every part ends with.
Json authored(Json json, const std::string& recorded_by, const std::string& recorded_at)
{
    json["recorded_by"] = recorded_by;
    json["recorded_at"] = recorded_at;
    return json;
}

Json photoJson(const PhotoRecord& photo)
{
    return authored({{"id", photo.id},
                     {"sha256", photo.sha256},
                     {"original_name", photo.original_name},
                     {"width_px", photo.width_px},
                     {"height_px", photo.height_px},
                     {"taken_at", photo.taken_at},
                     {"camera", photo.camera},
                     {"lens", photo.lens},
                     {"photographer", photo.photographer},
                     {"credit", photo.credit},
                     {"permission", photo.permission}},
                    photo.recorded_by, photo.recorded_at);
}

Json readingsJson(const std::vector<ReadingRecord>& records)
{
    Json json = Json::array();
    for (const ReadingRecord& record : records)
        json.push_back(authored({{"id", record.id},
                                 {"supersedes", record.supersedes},
                                 {"reading", readingJson(record.reading)}},
                                record.recorded_by, record.recorded_at));
    return json;
}

Json viewJson(const ViewRecord& view)
{
    Json outline = Json::array();
    for (std::size_t corner = 0; corner < 4; ++corner)
        outline.push_back(
            Json::array({view.outline_px[2 * corner], view.outline_px[2 * corner + 1]}));
    return authored({{"id", view.id},
                     {"photo_sha256", view.photo_sha256},
                     {"outline_px", outline},
                     {"up_deg", view.up_deg},
                     {"light_set", view.light_set},
                     {"readings", readingsJson(view.readings)}},
                    view.recorded_by, view.recorded_at);
}

Json orNull(const std::optional<double>& number)
{
    return number ? Json(*number) : Json(nullptr);
}

Json stampJson(const StampRecord& stamp)
{
    Json views = Json::array();
    for (const ViewRecord& view : stamp.views)
        views.push_back(viewJson(view));
    return authored({{"id", stamp.id},
                     {"part", nameOf(stamp.part)},
                     {"place", stamp.place},
                     {"method", nameOf(stamp.method)},
                     {"ink_colour", stamp.ink_colour},
                     {"frame", stamp.frame},
                     {"width_mm", orNull(stamp.width_mm)},
                     {"height_mm", orNull(stamp.height_mm)},
                     {"later_added", stamp.later_added},
                     {"views", views},
                     {"readings", readingsJson(stamp.readings)}},
                    stamp.recorded_by, stamp.recorded_at);
}

Json attributionJson(const AttributionRecord& attribution)
{
    return authored({{"id", attribution.id},
                     {"maker_id", attribution.maker_id},
                     {"maker_name", attribution.maker_name},
                     {"mark", attribution.mark},
                     {"register_sha256", attribution.register_sha256},
                     {"date_edtf", attribution.date_edtf},
                     {"certainty", nameOf(attribution.certainty)},
                     {"reasons", attribution.reasons},
                     {"engine_reasons", attribution.engine_reasons},
                     {"supersedes", attribution.supersedes}},
                    attribution.recorded_by, attribution.recorded_at);
}

Json datedEventJson(const DatedEventRecord& event)
{
    return authored({{"id", event.id},
                     {"kind", nameOf(event.kind)},
                     {"printed", event.printed},
                     {"edtf", event.edtf},
                     {"first_day", event.first_day},
                     {"last_day", event.last_day},
                     {"bound", nameOf(event.bound)},
                     {"stamp_id", event.stamp_id}},
                    event.recorded_by, event.recorded_at);
}

Json featureJson(const FeatureSeenRecord& feature)
{
    return authored({{"id", feature.id},
                     {"feature_id", feature.feature_id},
                     {"seen", nameOf(feature.seen)},
                     {"notes", feature.notes}},
                    feature.recorded_by, feature.recorded_at);
}

Json measurementJson(const MeasurementRecord& measurement)
{
    return authored({{"id", measurement.id},
                     {"what", measurement.what},
                     {"value", measurement.value},
                     {"unit", measurement.unit},
                     {"how", measurement.how}},
                    measurement.recorded_by, measurement.recorded_at);
}

Json correctionJson(const CorrectionRecord& correction)
{
    return authored({{"id", correction.id},
                     {"about", correction.about},
                     {"about_id", correction.about_id},
                     {"field", correction.field},
                     {"before", correction.before},
                     {"value", correction.value}},
                    correction.recorded_by, correction.recorded_at);
}

}  // namespace

Json itemJson(const ItemRecord& item)
{
    Json json = {{"id", item.id},
                 {"type_id", item.type_id},
                 {"accession_number", item.accession_number},
                 {"owner", item.owner},
                 {"condition", item.condition},
                 {"place_found", item.place_found},
                 {"notes", item.notes}};
    for (const char* list : {"photos", "stamps", "attributions", "dated_events", "features",
                             "measurements", "corrections"})
        json[list] = Json::array();
    for (const PhotoRecord& photo : item.photos)
        json["photos"].push_back(photoJson(photo));
    for (const StampRecord& stamp : item.stamps)
        json["stamps"].push_back(stampJson(stamp));
    for (const AttributionRecord& attribution : item.attributions)
        json["attributions"].push_back(attributionJson(attribution));
    for (const DatedEventRecord& event : item.dated_events)
        json["dated_events"].push_back(datedEventJson(event));
    for (const FeatureSeenRecord& feature : item.features)
        json["features"].push_back(featureJson(feature));
    for (const MeasurementRecord& measurement : item.measurements)
        json["measurements"].push_back(measurementJson(measurement));
    for (const CorrectionRecord& correction : item.corrections)
        json["corrections"].push_back(correctionJson(correction));
    return authored(json, item.recorded_by, item.recorded_at);
}

}  // namespace models
