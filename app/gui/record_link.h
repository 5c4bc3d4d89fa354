#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "app/gui/filed_record.h"

namespace gui {

// Ties the work in hand to the record it was filed as, or opened from.
struct RecordLink {
    models::ItemRecord item;
    std::set<std::string> views;  // those on the table that it has; an outline has its view's id,
                                  //   a stamp that stands in no photo its own
    std::map<std::string, models::Reading> last_reading;  // by view, as the person filed it
};

// For work just filed: the links of the piece's photos, in their order.
std::vector<RecordLink> linksFiled(const models::ItemRecord& item,
                                   const std::vector<PhotoWork>& piece, const FilingFacts& facts);
RecordLink linkOpened(const models::ItemRecord& item, const std::vector<StampWork>& stamps);

// What has changed in one photo since: new readings of views, stamps that are not in the record.
struct PhotoCorrection {
    struct NewReading {
        std::string view_id;  // or the id of a stamp that stands in no photo
        models::Reading reading;
        std::string supersedes;  // the same reader's reading before it, or empty
    };
    std::vector<NewReading> readings;
    std::vector<models::StampRecord> stamps;
};
PhotoCorrection correctionOf(const RecordLink& link, const vision::Photo& photo,
                             const std::vector<StampWork>& stamps, const FilingFacts& facts);

// Ties stamps that were added to the record.
void linkAdded(RecordLink& link, const std::vector<models::StampRecord>& stamps);

}  // namespace gui
