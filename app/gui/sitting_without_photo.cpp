// Records without a photo, and those whose photo cannot be read: their letters stand without a
// picture, and all that is said of them can be corrected.
#include <utility>

#include "app/gui/record_page.h"
#include "app/gui/sitting.h"

namespace gui {

void Sitting::openWithoutPhoto(const models::ItemRecord& item)
{
    goTo(queue_.addRecord(item.id, recordName(item)));
}

void Sitting::layWithoutPhoto(int place)
{
    Place& here = places_[place];
    if (!here.draft) {
        const auto item = look(queue_.recordAt(place));
        if (!item)
            return;
        Draft as_filed;
        as_filed.photo_sha256 = "record-" + item->id;  // drafts are named by it; it is no hash
        as_filed.stamps = workFromObject(*item);
        tieToRecord(here, *item, std::move(as_filed));
    }
    Q_EMIT noted(
        tr("This record has no photo. Its letters and what is said of the piece can be "
           "corrected all the same; Ctrl+S shows the record."));
    flow::Examination bare;
    bare.photo.file = queue_.file(place);
    bare.photo.sha256 = here.draft->photo_sha256;
    lay(place, bare);
}

}  // namespace gui
