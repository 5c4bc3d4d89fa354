#pragma once

#include <map>
#include <string>
#include <vector>

#include "app/gui/filed_record.h"

namespace gui {

// Ties the work in hand to the record it was filed as, or opened from.
struct RecordLink {
    models::ItemRecord item;
    std::map<std::string, std::string> view_of_stamp;     // ids: stamp on the table -> view
    std::map<std::string, models::Reading> last_reading;  // by view id, as the person filed it
};

// For work just filed: the links of the piece's photos, in their order.
std::vector<RecordLink> linksFiled(const models::ItemRecord& item,
                                   const std::vector<PhotoWork>& piece, const FilingFacts& facts);
// For a record opened from the archive: the stamps carry the views' ids.
RecordLink linkOpened(const models::ItemRecord& item, const std::vector<StampWork>& stamps);

// What has changed since: new readings of views, stamps that are not in the record yet.
struct Correction {
    struct NewReading {
        std::string view_id;
        models::Reading reading;
        std::string supersedes;  // the same reader's reading before it, or empty
    };
    std::vector<NewReading> readings;
    struct NewStamp {
        std::string stamp_id;  // on the table
        models::StampRecord record;
    };
    std::vector<NewStamp> stamps;
    std::vector<models::AttributionRecord> attributions;  // one, or none
};
Correction correctionOf(const RecordLink& link, const vision::Photo& photo,
                        const std::vector<StampWork>& stamps, const FilingFields& fields,
                        const FilingFacts& facts);

// Ties stamps that were added to the record: `stored_as` gives, by id on the table, the id of the
// stamp in the record, which must have been read anew.
void linkAdded(RecordLink& link, const std::map<std::string, std::string>& stored_as);

}  // namespace gui
