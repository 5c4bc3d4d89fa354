// What a draft's file holds.
#include <nlohmann/json.hpp>

#include "app/gui/draft.h"
#include "models/archive/record_names.h"
#include "models/exchange/reading_json.h"

namespace gui {

using Json = nlohmann::ordered_json;

namespace {

constexpr int draft_version = 1;

Json stampJson(const StampWork& stamp)
{
    Json corners = Json::array();
    for (const cv::Point2f& corner : stamp.outline.corners)
        corners.push_back({corner.x, corner.y});
    Json seen = Json::array();
    for (const CellPlace& place : stamp.seen)
        seen.push_back({place.line, place.cell});
    Json frame;
    if (stamp.photo_from_rectified)
        frame = std::vector<double>(stamp.photo_from_rectified->val,
                                    stamp.photo_from_rectified->val + 9);
    return {{"id", stamp.id},
            {"outline", corners},
            {"score", stamp.outline.score},
            {"up_deg", stamp.outline.up_deg},
            {"mirrored", stamp.mirrored},
            {"turned", stamp.turned},
            {"view_of", stamp.view_of},
            {"shown", models::readingJson(stamp.shown)},
            {"photo_from_rectified", frame},
            {"seen", seen},
            {"gone_through", stamp.gone_through},
            {"looked_ahead", stamp.looked_ahead},
            {"read_in_view", stamp.read_in_view}};
}

StampWork stampFromJson(const Json& json)
{
    StampWork stamp;
    stamp.id = json.at("id").get<std::string>();
    for (std::size_t i = 0; i < 4; ++i)
        stamp.outline.corners[i] = {json.at("outline").at(i).at(0).get<float>(),
                                    json.at("outline").at(i).at(1).get<float>()};
    stamp.outline.score = json.at("score").get<double>();
    stamp.outline.up_deg = json.at("up_deg").get<double>();
    // Drafts of an earlier version have none of these.
    stamp.mirrored = json.value("mirrored", false);
    stamp.turned = json.value("turned", false);
    stamp.view_of = json.value("view_of", "");
    stamp.shown = models::readingFromJson(json.at("shown"));
    if (!json.at("photo_from_rectified").is_null())
        stamp.photo_from_rectified =
            cv::Matx33d(json.at("photo_from_rectified").get<std::array<double, 9>>().data());
    for (const Json& place : json.at("seen"))
        stamp.seen.insert({place.at(0).get<std::size_t>(), place.at(1).get<std::size_t>()});
    stamp.gone_through = json.at("gone_through").get<bool>();
    stamp.looked_ahead = json.at("looked_ahead").get<bool>();
    stamp.read_in_view = json.at("read_in_view").get<bool>();
    return stamp;
}

Json factsJson(const FilingFields& fields)
{
    Json json = {{"stamps", Json::object()},
                 {"features", Json::object()},
                 {"measurements", Json::array()},
                 {"events", Json::array()}};
    for (const auto& [key, stamp] : fields.stamps)
        json["stamps"][key] = {{"part", models::nameOf(stamp.part)},
                               {"place", stamp.place},
                               {"method", models::nameOf(stamp.method)},
                               {"ink_colour", stamp.ink_colour},
                               {"later_added", stamp.later_added}};
    for (const auto& [id, feature] : fields.features)
        json["features"][id] = {{"seen", feature.seen ? models::nameOf(*feature.seen) : ""},
                                {"notes", feature.notes}};
    for (const MeasurementField& one : fields.measurements)
        json["measurements"].push_back(
            {{"id", one.id}, {"what", one.what}, {"value", one.value}, {"how", one.how}});
    for (const EventField& one : fields.events)
        json["events"].push_back({{"id", one.id},
                                  {"kind", models::nameOf(one.kind)},
                                  {"edtf", one.edtf},
                                  {"stamp_id", one.stamp_id}});
    return json;
}

void takeFacts(FilingFields& fields, const Json& json)
{
    for (const auto& [key, stamp] : json.at("stamps").items())
        fields.stamps[key] = {
            models::stampPartNamed(stamp.at("part")).value_or(models::StampPart::Unknown),
            stamp.at("place"),
            models::stampMethodNamed(stamp.at("method")).value_or(models::StampMethod::Unknown),
            stamp.at("ink_colour"), stamp.at("later_added")};
    for (const auto& [id, feature] : json.at("features").items())
        fields.features[id] = {models::featureSeenNamed(feature.at("seen")), feature.at("notes")};
    for (const Json& one : json.at("measurements"))
        fields.measurements.push_back(
            {one.at("id"), one.at("what"), one.at("value"), one.at("how")});
    for (const Json& one : json.at("events"))
        fields.events.push_back(
            {one.at("id"), models::eventKindNamed(one.at("kind")).value_or(models::EventKind::Made),
             one.at("edtf"), one.at("stamp_id")});
}

Json fieldsJson(const FilingFields& fields)
{
    return {{"accession_number", fields.accession_number},
            {"type_id", fields.type_id},
            {"notes", fields.notes},
            {"owner", fields.owner},
            {"condition", fields.condition},
            {"place_found", fields.place_found},
            {"facts", factsJson(fields)},
            {"replaces", fields.replaces},
            {"why_changed", fields.why_changed},
            {"maker_id", fields.maker_id},
            {"maker_name", fields.maker_name},
            {"mark", fields.mark},
            {"none_of_them", fields.none_of_them},
            {"date_edtf", fields.date_edtf},
            {"certainty", models::nameOf(fields.certainty)},
            {"reasons", fields.reasons},
            {"engine_reasons", fields.engine_reasons}};
}

FilingFields fieldsFromJson(const Json& json)
{
    const auto text = [&](const char* name) { return json.at(name).get<std::string>(); };
    FilingFields fields;
    fields.accession_number = text("accession_number");
    fields.type_id = text("type_id");
    fields.notes = text("notes");
    // Drafts of an earlier version have none of these.
    fields.owner = json.value("owner", "");
    fields.condition = json.value("condition", "");
    fields.place_found = json.value("place_found", "");
    fields.replaces = json.value("replaces", "");
    fields.why_changed = json.value("why_changed", "");
    if (json.contains("facts"))
        takeFacts(fields, json["facts"]);
    fields.maker_id = text("maker_id");
    fields.maker_name = text("maker_name");
    fields.mark = text("mark");
    fields.none_of_them = json.value("none_of_them", false);
    fields.date_edtf = text("date_edtf");
    fields.certainty =
        models::certaintyNamed(text("certainty")).value_or(models::Certainty::Possible);
    fields.reasons = text("reasons");
    fields.engine_reasons = text("engine_reasons");
    return fields;
}

}  // namespace

std::string draftText(const Draft& draft)
{
    Json stamps = Json::array();
    for (const StampWork& stamp : draft.stamps)
        stamps.push_back(stampJson(stamp));
    const Json json = {{"draft_version", draft_version},
                       {"photo", draft.photo.string()},
                       {"photo_sha256", draft.photo_sha256},
                       {"saved_at", draft.saved_at},
                       {"record_id", draft.record_id},
                       {"fields", fieldsJson(draft.fields)},
                       {"current", draft.current},
                       {"place", {draft.place.line, draft.place.cell}},
                       {"stamps", stamps}};
    return json.dump(1);
}

Draft draftFromText(const std::string& text)
{
    try {
        const Json json = Json::parse(text);
        if (json.at("draft_version").get<int>() > draft_version)
            throw DraftError("it was kept by a newer version");
        Draft draft;
        draft.photo = json.at("photo").get<std::string>();
        draft.photo_sha256 = json.at("photo_sha256").get<std::string>();
        draft.saved_at = json.at("saved_at").get<std::string>();
        draft.record_id = json.at("record_id").get<std::string>();
        draft.fields = fieldsFromJson(json.at("fields"));
        draft.current = json.value("current", 0);
        if (json.contains("place"))
            draft.place = {json["place"].at(0).get<std::size_t>(),
                           json["place"].at(1).get<std::size_t>()};
        for (const Json& stamp : json.at("stamps"))
            draft.stamps.push_back(stampFromJson(stamp));
        return draft;
    } catch (const Json::exception& error) {
        throw DraftError(std::string("it is not a whole draft: ") + error.what());
    } catch (const models::ExchangeError& error) {
        throw DraftError(std::string("its reading is damaged: ") + error.what());
    }
}

}  // namespace gui
