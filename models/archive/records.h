#pragma once

#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "models/date_bound.h"
#include "models/item_words.h"
#include "models/reading.h"

// What an archive holds, as plain values. Ids are UUID text, empty for what is not stored yet;
// times are UTC ("1956-03-01T12:00:00Z"); dates are EDTF. Every row has its author and time, which
// the archive fills in (`recorded_by`, `recorded_at`).
namespace models {

struct PhotoRecord {
    std::string id;
    std::filesystem::path file;  // when adding: the original to copy; when read back: the copy
    std::string sha256;
    std::string original_name;
    int width_px = 0, height_px = 0;
    std::string taken_at, camera, lens;  // capture facts
    std::string photographer, credit, permission;
    std::string recorded_by, recorded_at;

    bool operator==(const PhotoRecord&) const = default;
};

struct ReadingRecord {
    std::string id;
    Reading reading;
    std::string supersedes;  // id of the reading that this one corrects, or empty
    std::string recorded_by, recorded_at;

    bool operator==(const ReadingRecord&) const = default;
};

// A stamp's outline in one photo, and what was read there.
struct ViewRecord {
    std::string id;
    std::string photo_sha256;
    std::array<double, 8> outline_px{};  // x,y of four corners, photo pixels, clockwise
    double up_deg = 0;
    std::string light_set;  // views with the same non-empty name are one light set
    std::vector<ReadingRecord> readings;
    std::string recorded_by, recorded_at;

    bool operator==(const ViewRecord&) const = default;
};

struct StampRecord {
    std::string id;
    StampPart part = StampPart::Unknown;
    std::string place;  // where on the part, in words
    StampMethod method = StampMethod::Unknown;
    std::string ink_colour, frame;
    std::optional<double> width_mm, height_mm;
    bool later_added = false;
    std::vector<ViewRecord> views;
    std::vector<ReadingRecord> readings;  // of the object itself, not of a view
    std::string recorded_by, recorded_at;

    bool operator==(const StampRecord&) const = default;
};

struct AttributionRecord {
    std::string id;
    std::string maker_id, maker_name, mark;  // as they were when concluded
    std::string register_sha256;
    std::string date_edtf;
    Certainty certainty = Certainty::Possible;
    std::string reasons;         // in the person's words
    std::string engine_reasons;  // one a line
    std::string supersedes;      // id of the attribution it replaces, or empty
    std::string recorded_by, recorded_at;

    bool operator==(const AttributionRecord&) const = default;
};

struct DatedEventRecord {
    std::string id;
    EventKind kind = EventKind::Made;
    std::string printed, edtf, first_day, last_day;
    DateBound bound = DateBound::None;
    std::string stamp_id;  // where it was read, or empty
    std::string recorded_by, recorded_at;

    bool operator==(const DatedEventRecord&) const = default;
};

struct FeatureSeenRecord {
    std::string id;
    std::string feature_id;
    FeatureSeen seen = FeatureSeen::CannotBeSeen;
    std::string notes;
    std::string recorded_by, recorded_at;

    bool operator==(const FeatureSeenRecord&) const = default;
};

struct MeasurementRecord {
    std::string id;
    std::string what, unit, how;
    double value = 0;
    std::string recorded_by, recorded_at;

    bool operator==(const MeasurementRecord&) const = default;
};

// What was wrong or has changed in what was recorded: a field of the item or of one of its stamps,
// or a fact that is taken back. The record shows what now holds; nothing recorded is overwritten.
struct CorrectionRecord {
    std::string id;
    std::string about;     // "item", "stamp", "dated_event", "feature_seen" or "measurement"
    std::string about_id;  // the row's id
    std::string field;     // of an item: type_id, owner, condition, place_found, notes; of a stamp:
                           //   part, place, method, ink_colour, frame, later_added (1 or 0); of the
                           //   others: withdrawn
    std::string before;    // what held until now; the archive fills it in
    std::string value;     // what holds from now on; of `withdrawn` the reason
    std::string recorded_by, recorded_at;

    bool operator==(const CorrectionRecord&) const = default;
};

// One physical piece with everything recorded of it. Fields are as corrected last.
struct ItemRecord {
    std::string id;
    std::string type_id;
    std::string accession_number;  // empty: seen but not owned
    std::string owner, condition, place_found, notes;
    std::vector<PhotoRecord> photos;
    std::vector<StampRecord> stamps;
    std::vector<AttributionRecord> attributions;
    std::vector<DatedEventRecord> dated_events;
    std::vector<FeatureSeenRecord> features;
    std::vector<MeasurementRecord> measurements;
    std::vector<CorrectionRecord> corrections;  // in the order of recording; none when adding
    std::string recorded_by, recorded_at;

    bool operator==(const ItemRecord&) const = default;
};

// What is added to an item that is filed already.
struct RecordAdditions {
    std::vector<StampRecord> stamps;  // with an id of newRecordId where an event names one
    std::vector<DatedEventRecord> dated_events;
    std::vector<FeatureSeenRecord> features;
    std::vector<MeasurementRecord> measurements;
    std::vector<AttributionRecord> attributions;
    std::vector<CorrectionRecord> corrections;
};

}  // namespace models
