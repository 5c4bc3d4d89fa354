#include <algorithm>

#include "models/archive/entry.h"
#include "models/archive/record_names.h"
#include "models/archive/stored_readings.h"

namespace models {

namespace {

using sql::Field;
using sql::Row;

constexpr std::array<const char*, 8> corner_columns = {"x1_px", "y1_px", "x2_px", "y2_px",
                                                       "x3_px", "y3_px", "x4_px", "y4_px"};

ViewRecord saveView(const Entry& entry, const std::string& stamp_id, ViewRecord view,
                    const PhotoIds& photo_ids)
{
    const auto photo = photo_ids.find(view.photo_sha256);
    if (photo == photo_ids.end())
        throw ArchiveError("a view names a photo that the item does not have (" +
                           view.photo_sha256 + "); add that photo to the item");
    view.id = idOrNew(view.id);
    view.recorded_by = entry.author;
    view.recorded_at = entry.now;
    std::vector<Field> fields = {
        {"id", view.id},
        {"stamp_id", stamp_id},
        {"ordinal", nextOrdinal(entry.database, "stamp_view", "stamp_id", stamp_id)},
        {"photo_id", photo->second},
        {"up_deg", view.up_deg},
        {"light_set", view.light_set}};
    for (std::size_t i = 0; i < corner_columns.size(); ++i)
        fields.push_back({corner_columns[i], view.outline_px[i]});
    insertAuthored(entry, "stamp_view", fields);
    for (ReadingRecord& reading : view.readings)
        reading = saveReading(entry, stamp_id, view.id, reading);
    return view;
}

ViewRecord viewOf(const Row& row, const std::map<std::string, std::string>& sha256_of_photo)
{
    ViewRecord view;
    view.id = row.text("id");
    const auto photo = sha256_of_photo.find(row.text("photo_id"));
    if (photo == sha256_of_photo.end())
        row.refuse("photo_id");
    view.photo_sha256 = photo->second;
    for (std::size_t i = 0; i < corner_columns.size(); ++i)
        view.outline_px[i] = row.real(corner_columns[i]);
    view.up_deg = row.real("up_deg");
    view.light_set = row.text("light_set");
    view.recorded_by = row.text("recorded_by");
    view.recorded_at = row.text("recorded_at");
    return view;
}

StampRecord stampOf(const Row& row)
{
    StampRecord stamp;
    stamp.id = row.text("id");
    const std::optional<StampPart> part = stampPartNamed(row.text("part"));
    const std::optional<StampMethod> method = stampMethodNamed(row.text("method"));
    if (!part)
        row.refuse("part");
    if (!method)
        row.refuse("method");
    stamp.part = *part;
    stamp.method = *method;
    stamp.place = row.text("place");
    stamp.ink_colour = row.text("ink_colour");
    stamp.frame = row.text("frame");
    stamp.width_mm = row.realOrNone("width_mm");
    stamp.height_mm = row.realOrNone("height_mm");
    stamp.later_added = row.flag("later_added");
    stamp.recorded_by = row.text("recorded_by");
    stamp.recorded_at = row.text("recorded_at");
    return stamp;
}

// Puts each stored reading with its view, or with the stamp itself.
void placeReadings(StampRecord& stamp, std::vector<StoredReading> readings)
{
    for (StoredReading& stored : readings) {
        if (stored.view_id.empty()) {
            stamp.readings.push_back(std::move(stored.record));
            continue;
        }
        const auto view =
            std::find_if(stamp.views.begin(), stamp.views.end(),
                         [&](const ViewRecord& one) { return one.id == stored.view_id; });
        if (view != stamp.views.end())
            view->readings.push_back(std::move(stored.record));
    }
}

}  // namespace

StampRecord saveStamp(const Entry& entry, const std::string& item_id, StampRecord stamp,
                      const PhotoIds& photo_ids)
{
    stamp.id = idOrNew(stamp.id);
    stamp.recorded_by = entry.author;
    stamp.recorded_at = entry.now;
    insertAuthored(entry, "stamp",
                   {{"id", stamp.id},
                    {"item_id", item_id},
                    {"ordinal", nextOrdinal(entry.database, "stamp", "item_id", item_id)},
                    {"part", std::string(nameOf(stamp.part))},
                    {"place", stamp.place},
                    {"method", std::string(nameOf(stamp.method))},
                    {"ink_colour", stamp.ink_colour},
                    {"frame", stamp.frame},
                    {"width_mm", sql::realOrNull(stamp.width_mm)},
                    {"height_mm", sql::realOrNull(stamp.height_mm)},
                    {"later_added", sql::flag(stamp.later_added)}});
    for (ViewRecord& view : stamp.views)
        view = saveView(entry, stamp.id, view, photo_ids);
    for (ReadingRecord& reading : stamp.readings)
        reading = saveReading(entry, stamp.id, {}, reading);
    return stamp;
}

std::vector<StampRecord> loadStamps(const sql::Database& database, const std::string& item_id)
{
    std::map<std::string, std::string> sha256_of_photo;
    for (const Row& row : childRows(database, "photo", "item_id", item_id))
        sha256_of_photo[row.text("id")] = row.text("sha256");

    std::vector<StampRecord> stamps;
    for (const Row& row : childRows(database, "stamp", "item_id", item_id)) {
        StampRecord stamp = stampOf(row);
        for (const Row& view : childRows(database, "stamp_view", "stamp_id", stamp.id))
            stamp.views.push_back(viewOf(view, sha256_of_photo));
        placeReadings(stamp, loadReadings(database, stamp.id));
        stamps.push_back(std::move(stamp));
    }
    return stamps;
}

}  // namespace models
