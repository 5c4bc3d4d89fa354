#include "models/archive/corrections.h"

#include <algorithm>
#include <map>
#include <stdexcept>
#include <utility>

#include "models/archive/record_names.h"

namespace models {

namespace {

// What a field holds, as text.
std::string* itemField(ItemRecord& item, const std::string& field)
{
    const std::map<std::string, std::string*> fields = {{"type_id", &item.type_id},
                                                        {"owner", &item.owner},
                                                        {"condition", &item.condition},
                                                        {"place_found", &item.place_found},
                                                        {"notes", &item.notes}};
    const auto found = fields.find(field);
    return found == fields.end() ? nullptr : found->second;
}

std::string stampField(const StampRecord& stamp, const std::string& field)
{
    if (field == "part")
        return nameOf(stamp.part);
    if (field == "method")
        return nameOf(stamp.method);
    if (field == "later_added")
        return stamp.later_added ? "1" : "0";
    if (field == "place")
        return stamp.place;
    if (field == "ink_colour")
        return stamp.ink_colour;
    if (field == "frame")
        return stamp.frame;
    throw std::invalid_argument("a stamp has no field '" + field + "' that could be corrected");
}

// False where the value is none of the field.
bool setStampField(StampRecord& stamp, const std::string& field, const std::string& value)
{
    if (field == "part") {
        const std::optional<StampPart> part = stampPartNamed(value);
        stamp.part = part.value_or(stamp.part);
        return part.has_value();
    }
    if (field == "method") {
        const std::optional<StampMethod> method = stampMethodNamed(value);
        stamp.method = method.value_or(stamp.method);
        return method.has_value();
    }
    if (field == "later_added") {
        stamp.later_added = value == "1";
        return value == "0" || value == "1";
    }
    if (field == "place")
        stamp.place = value;
    else if (field == "ink_colour")
        stamp.ink_colour = value;
    else if (field == "frame")
        stamp.frame = value;
    else
        return false;
    return true;
}

StampRecord* stampOfItem(ItemRecord& item, const std::string& id)
{
    const auto found = std::find_if(item.stamps.begin(), item.stamps.end(),
                                    [&](const StampRecord& stamp) { return stamp.id == id; });
    return found == item.stamps.end() ? nullptr : &*found;
}

bool isFact(const CorrectionRecord& correction)
{
    return correction.about == "dated_event" || correction.about == "feature_seen" ||
           correction.about == "measurement";
}

// What held until now; throws where there is no such row or field.
std::string valueBefore(const Entry& entry, ItemRecord& item, const CorrectionRecord& correction)
{
    const auto refuse = [&](const std::string& what) {
        throw ArchiveError("there is no " + what + " " + correction.about_id + " of this item in " +
                           entry.database.file().string() + "; look its id up in the record");
    };
    if (correction.about == "item") {
        if (const std::string* field = itemField(item, correction.field))
            return *field;
        throw std::invalid_argument("an item has no field '" + correction.field +
                                    "' that could be corrected");
    }
    if (correction.about == "stamp") {
        StampRecord* stamp = stampOfItem(item, correction.about_id);
        if (!stamp)
            refuse("stamp");
        const std::string before = stampField(*stamp, correction.field);
        if (!setStampField(*stamp, correction.field, correction.value))
            throw std::invalid_argument("'" + correction.value + "' is no " + correction.field +
                                        " of a stamp");
        return before;
    }
    if (!isFact(correction) || correction.field != "withdrawn")
        throw std::invalid_argument("there is nothing to correct in " + correction.about + ", " +
                                    correction.field);
    if (entry.database
            .rows(correction.about, "WHERE id = :id AND item_id = :item_id",
                  {{"id", correction.about_id}, {"item_id", item.id}})
            .empty())
        refuse(correction.about);
    return {};
}

}  // namespace

std::vector<CorrectionRecord> loadCorrections(const sql::Database& database,
                                              const std::string& item_id)
{
    std::vector<CorrectionRecord> corrections;
    for (const sql::Row& row : childRows(database, "correction", "item_id", item_id))
        corrections.push_back({row.text("id"), row.text("about"), row.text("about_id"),
                               row.text("field"), row.text("value_before"), row.text("value_now"),
                               row.text("recorded_by"), row.text("recorded_at")});
    return corrections;
}

void applyCorrections(ItemRecord& item, std::vector<CorrectionRecord> corrections)
{
    for (const CorrectionRecord& correction : corrections) {
        if (correction.about == "item") {
            if (std::string* field = itemField(item, correction.field))
                *field = correction.value;
        } else if (correction.about == "stamp") {
            if (StampRecord* stamp = stampOfItem(item, correction.about_id))
                setStampField(*stamp, correction.field, correction.value);
        }
    }
    item.corrections = std::move(corrections);
}

void saveCorrection(const Entry& entry, const std::string& item_id, CorrectionRecord correction)
{
    const std::vector<sql::Row> rows =
        entry.database.rows("item", "WHERE id = :id", {{"id", item_id}});
    ItemRecord current = loadItem(entry.database, entry.folder, rows.at(0));
    correction.before = valueBefore(entry, current, correction);
    insertAuthored(entry, "correction",
                   {{"id", idOrNew(correction.id)},
                    {"item_id", item_id},
                    {"ordinal", nextOrdinal(entry.database, "correction", "item_id", item_id)},
                    {"about", correction.about},
                    {"about_id", correction.about == "item" ? item_id : correction.about_id},
                    {"field", correction.field},
                    {"value_before", correction.before},
                    {"value_now", correction.value}});
}

}  // namespace models
