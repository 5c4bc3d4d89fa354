#include "app/gui/record_link.h"

namespace gui {

namespace {

// The latest reading by this reader in the view with this id; nullptr when there is none.
const models::ReadingRecord* lastBy(const models::ItemRecord& item, const std::string& view_id,
                                    const std::string& reader)
{
    for (const models::StampRecord& stamp : item.stamps)
        for (const models::ViewRecord& view : stamp.views) {
            if (view.id != view_id)
                continue;
            for (auto it = view.readings.rbegin(); it != view.readings.rend(); ++it)
                if (it->reading.reader == reader)
                    return &*it;
        }
    return nullptr;
}

bool concludesOtherwise(const FilingFields& fields, const FilingFields& before)
{
    return fields.maker_id != before.maker_id || fields.none_of_them != before.none_of_them ||
           fields.date_edtf != before.date_edtf || fields.certainty != before.certainty ||
           fields.reasons != before.reasons;
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
        const std::string& view_id = item.stamps.at(slot.stamp).views.at(slot.view).id;
        link.view_of_stamp[slot.stamp_id] = view_id;
        const StampWork& stamp = piece[slot.photo].stamps[slot.work];
        if (const auto own = filedReading(stamp, facts.person, facts.now, facts.layer))
            link.last_reading[view_id] = *own;
    }
    return links;
}

RecordLink linkOpened(const models::ItemRecord& item, const std::vector<StampWork>& stamps)
{
    RecordLink link;
    link.item = item;
    for (const StampWork& stamp : stamps) {
        link.view_of_stamp[stamp.id] = stamp.id;
        link.last_reading[stamp.id] = stamp.shown;
    }
    return link;
}

Correction correctionOf(const RecordLink& link, const vision::Photo& photo,
                        const std::vector<StampWork>& stamps, const FilingFields& fields,
                        const FilingFacts& facts)
{
    Correction correction;
    std::vector<StampWork> added;
    for (const StampWork& stamp : stamps) {
        const auto view = link.view_of_stamp.find(stamp.id);
        if (view == link.view_of_stamp.end()) {
            added.push_back(stamp);
            continue;
        }
        const auto own = filedReading(stamp, facts.person, facts.now, facts.layer);
        const auto last = link.last_reading.find(view->second);
        const bool same =
            last != link.last_reading.end() && own && own->lines == last->second.lines;
        if (!own || same)
            continue;
        const auto* before = lastBy(link.item, view->second, facts.person);
        correction.readings.push_back({view->second, *own, before ? before->id : std::string()});
    }
    models::ItemRecord rest = itemFromWork(photo, added, fields, facts);
    for (std::size_t i = 0; i < added.size(); ++i)
        correction.stamps.push_back({added[i].id, rest.stamps[i]});
    if (concludesOtherwise(fields, fieldsFromItem(link.item)))
        correction.attributions = std::move(rest.attributions);
    if (!correction.attributions.empty() && !link.item.attributions.empty())
        correction.attributions.front().supersedes = link.item.attributions.back().id;
    return correction;
}

void linkAdded(RecordLink& link, const std::map<std::string, std::string>& stored_as)
{
    for (const auto& [stamp_id, stored_id] : stored_as)
        for (const models::StampRecord& stamp : link.item.stamps) {
            if (stamp.id != stored_id || stamp.views.empty())
                continue;
            const models::ViewRecord& view = stamp.views.front();
            link.view_of_stamp[stamp_id] = view.id;
            if (!view.readings.empty())
                link.last_reading[view.id] = view.readings.back().reading;
        }
}

}  // namespace gui
