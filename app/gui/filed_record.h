#pragma once

#include <string>
#include <vector>

#include "app/gui/photo_work.h"
#include "models/archive/records.h"

namespace gui {

// What is said beside the letters when a record is made.
struct FilingFacts {
    std::string person;
    std::string now;              // UTC
    std::string layer;            // the layer in view
    std::string register_sha256;  // of the register in use
};

// The work on one photo of a piece.
struct PhotoWork {
    const vision::Photo* photo = nullptr;
    std::vector<StampWork> stamps;
};

// Where the record of a piece has the stamps on the table.
struct RecordSlot {
    std::string stamp_id;             // on the table
    std::size_t stamp = 0, view = 0;  // in the record
    std::size_t photo = 0, work = 0;  // whence it comes
};
// A stamp that is another view of one that is there too goes with it.
std::vector<RecordSlot> slotsOf(const std::vector<PhotoWork>& piece);

// The record of an item from the work on its photos: the photos, a stamp with one view for each
// outline (more where outlines are views of one stamp; a view has the id that its stamp has on the
// table), the engines' readings and the person's beside them, and what the person says of it all.
models::ItemRecord itemFromPiece(const std::vector<PhotoWork>& piece, const FilingFields& fields,
                                 const FilingFacts& facts);
models::ItemRecord itemFromWork(const vision::Photo& photo, const std::vector<StampWork>& stamps,
                                const FilingFields& fields, const FilingFacts& facts);

// The stamps of a record that stand in the photo with this hash, as work not examined yet: each
// shows its latest reading by a person, or the latest at all.
std::vector<StampWork> workFromItem(const models::ItemRecord& item,
                                    const std::string& photo_sha256);
// The same of the stamps that stand in no photo: what was read on the object itself.
std::vector<StampWork> workFromObject(const models::ItemRecord& item);

}  // namespace gui
