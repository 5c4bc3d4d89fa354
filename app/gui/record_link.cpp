#include "app/gui/record_link.h"

namespace gui {

namespace {

// The latest reading by this reader; nullptr when there is none.
const models::ReadingRecord* lastBy(const std::vector<models::ReadingRecord>& readings,
                                    const std::string& reader)
{
    for (auto it = readings.rbegin(); it != readings.rend(); ++it)
        if (it->reading.reader == reader)
            return &*it;
    return nullptr;
}

// The same in the view with this id, or of the stamp with this id itself.
const models::ReadingRecord* lastBy(const models::ItemRecord& item, const std::string& id,
                                    const std::string& reader)
{
    for (const models::StampRecord& stamp : item.stamps) {
        if (stamp.views.empty() && stamp.id == id)
            return lastBy(stamp.readings, reader);
        for (const models::ViewRecord& view : stamp.views)
            if (view.id == id)
                return lastBy(view.readings, reader);
    }
    return nullptr;
}

}  // namespace

std::vector<RecordLink> linksFiled(const models::ItemRecord& item,
                                   const std::vector<PhotoWork>& piece, const FilingFacts& facts)
{
    std::vector<RecordLink> links(piece.size());
    for (RecordLink& link : links)
        link.item = item;
    for (const RecordSlot& slot : slotsOf(piece)) {
        RecordLink& link = links[slot.photo];
        link.views.insert(slot.stamp_id);
        const StampWork& stamp = piece[slot.photo].stamps[slot.work];
        if (const auto own = filedReading(stamp, facts.person, facts.now, facts.layer))
            link.last_reading[slot.stamp_id] = *own;
    }
    return links;
}

RecordLink linkOpened(const models::ItemRecord& item, const std::vector<StampWork>& stamps)
{
    RecordLink link;
    link.item = item;
    for (const StampWork& stamp : stamps) {
        link.views.insert(stamp.id);
        link.last_reading[stamp.id] = stamp.shown;
    }
    return link;
}

PhotoCorrection correctionOf(const RecordLink& link, const vision::Photo& photo,
                             const std::vector<StampWork>& stamps, const FilingFacts& facts)
{
    PhotoCorrection correction;
    std::vector<StampWork> added;
    for (const StampWork& stamp : stamps) {
        if (!link.views.count(stamp.id)) {
            added.push_back(stamp);
            continue;
        }
        auto own = filedReading(stamp, facts.person, facts.now, facts.layer);
        if (own && photo.pixels.empty())  // no picture was looked at
            own->basis = models::Basis::ObjectInHand;
        const auto last = link.last_reading.find(stamp.id);
        const bool same =
            last != link.last_reading.end() && own && own->lines == last->second.lines;
        if (!own || same)
            continue;
        const auto* before = lastBy(link.item, stamp.id, facts.person);
        correction.readings.push_back({stamp.id, *own, before ? before->id : std::string()});
    }
    correction.stamps = itemFromWork(photo, added, {}, facts).stamps;
    return correction;
}

void linkAdded(RecordLink& link, const std::vector<models::StampRecord>& stamps)
{
    for (const models::StampRecord& stamp : stamps)
        for (const models::ViewRecord& view : stamp.views) {
            link.views.insert(view.id);
            if (!view.readings.empty())
                link.last_reading[view.id] = view.readings.back().reading;
        }
}

}  // namespace gui
