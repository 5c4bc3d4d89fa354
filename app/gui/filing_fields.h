#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "models/archive/records.h"

namespace gui {

// What the person says of one stamp beside its letters.
struct StampFacts {
    models::StampPart part = models::StampPart::Unknown;
    std::string place;  // where on the part
    models::StampMethod method = models::StampMethod::Unknown;
    std::string ink_colour;
    bool later_added = false;

    bool operator==(const StampFacts&) const = default;
};

struct FeatureField {
    std::optional<models::FeatureSeen> seen;  // nothing: not looked at
    std::string notes;

    bool operator==(const FeatureField&) const = default;
};

struct MeasurementField {
    std::string id;                // of the filed fact that it stands for; empty: a new one
    std::string what, value, how;  // value with its unit, as flow::lengthFrom takes it

    bool operator==(const MeasurementField&) const = default;
};

struct EventField {
    std::string id;  // as of a measurement
    models::EventKind kind = models::EventKind::Made;
    std::string edtf;
    std::string stamp_id;  // where it was read (see stampKey); empty: not from a stamp

    bool operator==(const EventField&) const = default;
};

// What the person says of the item when filing it; text as typed.
struct FilingFields {
    std::string accession_number, type_id, notes;
    std::string owner, condition, place_found;
    std::map<std::string, StampFacts> stamps;      // by stampKey
    std::map<std::string, FeatureField> features;  // by the feature's id
    std::vector<MeasurementField> measurements;
    std::vector<EventField> events;
    std::string maker_id, maker_name, mark;  // empty: no maker concluded
    bool none_of_them = false;               // concluded: no maker of the register
    std::string date_edtf;
    models::Certainty certainty = models::Certainty::Possible;
    std::string reasons, engine_reasons;
    std::string replaces;     // id of the filed conclusion that this one replaces; empty: a rival
    std::string why_changed;  // recorded with facts that are taken back

    bool operator==(const FilingFields&) const = default;
};

// A text that the record of an item has as it is said here, and that can be corrected there.
struct ItemText {
    const char* name;  // by which the archive knows it
    std::string FilingFields::*said;
    std::string models::ItemRecord::*recorded;
};
inline constexpr ItemText item_texts[] = {
    {"type_id", &FilingFields::type_id, &models::ItemRecord::type_id},
    {"owner", &FilingFields::owner, &models::ItemRecord::owner},
    {"condition", &FilingFields::condition, &models::ItemRecord::condition},
    {"place_found", &FilingFields::place_found, &models::ItemRecord::place_found},
    {"notes", &FilingFields::notes, &models::ItemRecord::notes}};

// The name of a stamp among what is said of an item: the id of its first view, which is that of its
// outline on the table; that of the stamp itself where it has none.
std::string stampKey(const models::StampRecord& stamp);

// What is said of a filed item, the conclusion being the latest.
FilingFields fieldsFromItem(const models::ItemRecord& item);

// The facts of one stamp into its record.
void putStampFacts(models::StampRecord& stamp, const FilingFields& fields);

// Puts all that is said, save the conclusion, into a record, in place of what it says. A fact that
// cannot be understood (see troubleIn) is left out.
void putFields(models::ItemRecord& item, const FilingFields& fields);

// Nothing for a fact that cannot be understood. The stamp that an event was read from gets an id,
// so that it can be named.
std::optional<models::MeasurementRecord> measurementOf(const MeasurementField& field);
std::optional<models::DatedEventRecord> eventOf(const EventField& field, models::ItemRecord& item);

// Nothing where neither maker nor date is concluded.
std::optional<models::AttributionRecord> conclusionOf(const FilingFields& fields,
                                                      const std::string& register_sha256);
bool concludesOtherwise(const FilingFields& fields, const FilingFields& before);

// What has to be added to a filed item, and corrected in it, so that it says this; the conclusion
// among it where it is another than the latest. Stamps are those of the item.
models::RecordAdditions changesOf(const FilingFields& fields, const models::ItemRecord& item,
                                  const std::string& register_sha256);

// The first fact that cannot be understood, in its own text; empty where there is none.
struct FactTrouble {
    enum Kind { None, Length, LengthOfNothing, Date } kind = None;
    std::string text, why;
};
FactTrouble troubleIn(const FilingFields& fields);

// Of which field `to` differs: changes of the same one, made one after the other while typing, are
// undone together. Negative where every change stands alone.
int fieldChanged(const FilingFields& from, const FilingFields& to);

}  // namespace gui
