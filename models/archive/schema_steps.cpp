#include "models/archive/schema_steps.h"

#include <stdexcept>

namespace models::sql {

namespace {

// `ordinal` keeps the order of recording within a parent; `row_sum` is sql_row.h's rowSum.
const std::vector<std::string> first_step = {
    "CREATE TABLE schema_version ("
    "version INTEGER PRIMARY KEY, migrated_at TEXT NOT NULL, schema_sum TEXT NOT NULL, "
    "row_sum TEXT NOT NULL)",

    "CREATE TABLE item ("
    "id TEXT PRIMARY KEY, ordinal INTEGER NOT NULL, type_id TEXT NOT NULL, "
    "accession_number TEXT UNIQUE, owner TEXT NOT NULL, condition TEXT NOT NULL, "
    "place_found TEXT NOT NULL, notes TEXT NOT NULL, recorded_by TEXT NOT NULL, "
    "recorded_at TEXT NOT NULL, row_sum TEXT NOT NULL)",

    "CREATE TABLE original ("
    "sha256 TEXT PRIMARY KEY, extension TEXT NOT NULL, byte_count BIGINT NOT NULL, "
    "recorded_by TEXT NOT NULL, recorded_at TEXT NOT NULL, row_sum TEXT NOT NULL)",

    "CREATE TABLE photo ("
    "id TEXT PRIMARY KEY, item_id TEXT NOT NULL REFERENCES item (id), "
    "ordinal INTEGER NOT NULL, sha256 TEXT NOT NULL REFERENCES original (sha256), "
    "original_name TEXT NOT NULL, width_px INTEGER NOT NULL, height_px INTEGER NOT NULL, "
    "taken_at TEXT NOT NULL, camera TEXT NOT NULL, lens TEXT NOT NULL, "
    "photographer TEXT NOT NULL, credit TEXT NOT NULL, permission TEXT NOT NULL, "
    "recorded_by TEXT NOT NULL, recorded_at TEXT NOT NULL, row_sum TEXT NOT NULL, "
    "UNIQUE (item_id, sha256))",

    "CREATE TABLE photo_tombstone ("
    "photo_id TEXT PRIMARY KEY REFERENCES photo (id), reason TEXT NOT NULL, "
    "recorded_by TEXT NOT NULL, recorded_at TEXT NOT NULL, row_sum TEXT NOT NULL)",

    "CREATE TABLE stamp ("
    "id TEXT PRIMARY KEY, item_id TEXT NOT NULL REFERENCES item (id), "
    "ordinal INTEGER NOT NULL, part TEXT NOT NULL, place TEXT NOT NULL, "
    "method TEXT NOT NULL, ink_colour TEXT NOT NULL, frame TEXT NOT NULL, "
    "width_mm DOUBLE PRECISION, height_mm DOUBLE PRECISION, later_added INTEGER NOT NULL, "
    "recorded_by TEXT NOT NULL, recorded_at TEXT NOT NULL, row_sum TEXT NOT NULL)",

    "CREATE TABLE stamp_view ("
    "id TEXT PRIMARY KEY, stamp_id TEXT NOT NULL REFERENCES stamp (id), "
    "ordinal INTEGER NOT NULL, photo_id TEXT NOT NULL REFERENCES photo (id), "
    "x1_px DOUBLE PRECISION NOT NULL, y1_px DOUBLE PRECISION NOT NULL, "
    "x2_px DOUBLE PRECISION NOT NULL, y2_px DOUBLE PRECISION NOT NULL, "
    "x3_px DOUBLE PRECISION NOT NULL, y3_px DOUBLE PRECISION NOT NULL, "
    "x4_px DOUBLE PRECISION NOT NULL, y4_px DOUBLE PRECISION NOT NULL, "
    "up_deg DOUBLE PRECISION NOT NULL, light_set TEXT NOT NULL, recorded_by TEXT NOT NULL, "
    "recorded_at TEXT NOT NULL, row_sum TEXT NOT NULL)",

    "CREATE TABLE reading ("
    "id TEXT PRIMARY KEY, stamp_id TEXT NOT NULL REFERENCES stamp (id), "
    "view_id TEXT REFERENCES stamp_view (id), ordinal INTEGER NOT NULL, "
    "reader TEXT NOT NULL, basis TEXT NOT NULL, read_at TEXT NOT NULL, "
    "candidates_were_shown INTEGER, layer TEXT NOT NULL, options TEXT NOT NULL, "
    "weights_sha256 TEXT NOT NULL, typed TEXT NOT NULL, "
    "supersedes TEXT REFERENCES reading (id), recorded_by TEXT NOT NULL, "
    "recorded_at TEXT NOT NULL, row_sum TEXT NOT NULL)",

    "CREATE TABLE reading_lines ("
    "reading_id TEXT PRIMARY KEY REFERENCES reading (id), lines_json TEXT NOT NULL, "
    "row_sum TEXT NOT NULL)",

    "CREATE TABLE attribution ("
    "id TEXT PRIMARY KEY, item_id TEXT NOT NULL REFERENCES item (id), "
    "ordinal INTEGER NOT NULL, maker_id TEXT NOT NULL, maker_name TEXT NOT NULL, "
    "mark TEXT NOT NULL, register_sha256 TEXT NOT NULL, date_edtf TEXT NOT NULL, "
    "certainty TEXT NOT NULL, reasons TEXT NOT NULL, engine_reasons TEXT NOT NULL, "
    "supersedes TEXT REFERENCES attribution (id), recorded_by TEXT NOT NULL, "
    "recorded_at TEXT NOT NULL, row_sum TEXT NOT NULL)",

    "CREATE TABLE dated_event ("
    "id TEXT PRIMARY KEY, item_id TEXT NOT NULL REFERENCES item (id), "
    "ordinal INTEGER NOT NULL, kind TEXT NOT NULL, printed TEXT NOT NULL, "
    "edtf TEXT NOT NULL, first_day TEXT NOT NULL, last_day TEXT NOT NULL, "
    "bound TEXT NOT NULL, stamp_id TEXT REFERENCES stamp (id), recorded_by TEXT NOT NULL, "
    "recorded_at TEXT NOT NULL, row_sum TEXT NOT NULL)",

    "CREATE TABLE feature_seen ("
    "id TEXT PRIMARY KEY, item_id TEXT NOT NULL REFERENCES item (id), "
    "ordinal INTEGER NOT NULL, feature_id TEXT NOT NULL, seen TEXT NOT NULL, "
    "notes TEXT NOT NULL, recorded_by TEXT NOT NULL, recorded_at TEXT NOT NULL, "
    "row_sum TEXT NOT NULL)",

    "CREATE TABLE measurement ("
    "id TEXT PRIMARY KEY, item_id TEXT NOT NULL REFERENCES item (id), "
    "ordinal INTEGER NOT NULL, what TEXT NOT NULL, unit TEXT NOT NULL, how TEXT NOT NULL, "
    "measured_value DOUBLE PRECISION NOT NULL, recorded_by TEXT NOT NULL, "
    "recorded_at TEXT NOT NULL, row_sum TEXT NOT NULL)",

    "CREATE INDEX photo_of_item ON photo (item_id)",
    "CREATE INDEX stamp_of_item ON stamp (item_id)",
    "CREATE INDEX stamp_view_of_stamp ON stamp_view (stamp_id)",
    "CREATE INDEX reading_of_stamp ON reading (stamp_id)",
    "CREATE INDEX attribution_of_item ON attribution (item_id)",
    "CREATE INDEX dated_event_of_item ON dated_event (item_id)",
    "CREATE INDEX feature_seen_of_item ON feature_seen (item_id)",
    "CREATE INDEX measurement_of_item ON measurement (item_id)",
};

// What holds instead of a recorded value.
const std::vector<std::string> second_step = {
    "CREATE TABLE correction ("
    "id TEXT PRIMARY KEY, item_id TEXT NOT NULL REFERENCES item (id), "
    "ordinal INTEGER NOT NULL, about TEXT NOT NULL, about_id TEXT NOT NULL, "
    "field TEXT NOT NULL, value_before TEXT NOT NULL, value_now TEXT NOT NULL, "
    "recorded_by TEXT NOT NULL, recorded_at TEXT NOT NULL, row_sum TEXT NOT NULL)",

    "CREATE INDEX correction_of_item ON correction (item_id)",
};

}  // namespace

std::vector<std::string> schemaStep(int version)
{
    switch (version) {
        case 1:
            return first_step;
        case 2:
            return second_step;
        default:
            throw std::invalid_argument("there is no such step of the schema");
    }
}

}  // namespace models::sql
