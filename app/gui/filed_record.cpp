#include "app/gui/filed_record.h"

#include "app/flow/filing.h"

namespace gui {

namespace {

// What the engines saw and, beside it, what the person made of it. The outline is the one in the
// photo now, even if it has been moved since it was read.
models::StampRecord stampRecord(const vision::Photo& photo, const StampWork& work,
                                const FilingFacts& facts)
{
    models::StampRecord stamp;
    if (work.examined)
        stamp = flow::stampRecord(photo, *work.examined, facts.now);
    if (stamp.views.empty())
        stamp.views.emplace_back();
    models::ViewRecord& view = stamp.views.front();
    view.id = work.id;
    view.photo_sha256 = photo.sha256;
    view.up_deg = work.outline.up_deg;
    for (std::size_t i = 0; i < 4; ++i) {
        view.outline_px[2 * i] = work.outline.corners[i].x;
        view.outline_px[2 * i + 1] = work.outline.corners[i].y;
    }
    if (const auto own = filedReading(work, facts.person, facts.now, facts.layer)) {
        models::ReadingRecord record;
        record.reading = *own;
        view.readings.push_back(record);
    } else if (work.looked_ahead) {  // of what is filed as the engine read it, that is to be known
        for (models::ReadingRecord& read : view.readings)
            read.reading.candidates_were_shown = true;
    }
    return stamp;
}

// The latest reading in which the reader vouches for a cell, as a person does; else the last.
const models::Reading* readingToShow(const std::vector<models::ReadingRecord>& readings)
{
    for (auto it = readings.rbegin(); it != readings.rend(); ++it)
        if (hasConfirmed(it->reading, it->reading.reader))
            return &it->reading;
    return readings.empty() ? nullptr : &readings.back().reading;
}

void takeRecorded(StampWork& work, const std::vector<models::ReadingRecord>& readings)
{
    if (const models::Reading* reading = readingToShow(readings)) {
        work.shown = *reading;
        work.mirrored = flow::isMirrored(*reading);
    }
    work.gone_through = true;
}

}  // namespace

std::vector<RecordSlot> slotsOf(const std::vector<PhotoWork>& piece)
{
    std::vector<RecordSlot> slots;
    std::size_t stamps = 0;
    const auto isThere = [&](const std::string& id) {
        for (const PhotoWork& photo : piece)
            for (const StampWork& stamp : photo.stamps)
                if (stamp.id == id && stamp.view_of.empty())
                    return true;
        return false;
    };
    const auto place = [&](bool first_views) {
        for (std::size_t i = 0; i < piece.size(); ++i)
            for (std::size_t k = 0; k < piece[i].stamps.size(); ++k) {
                const StampWork& stamp = piece[i].stamps[k];
                const bool first = !isThere(stamp.view_of);
                if (first != first_views)
                    continue;
                RecordSlot slot{stamp.id, stamps, 0, i, k};
                for (const RecordSlot& other : slots)
                    if (!first && other.stamp_id == stamp.view_of)
                        slot.stamp = other.stamp;
                for (const RecordSlot& other : slots)
                    slot.view += !first && other.stamp == slot.stamp ? 1 : 0;
                stamps += first ? 1 : 0;
                slots.push_back(slot);
            }
    };
    place(true);
    place(false);
    return slots;
}

models::ItemRecord itemFromWork(const vision::Photo& photo, const std::vector<StampWork>& stamps,
                                const FilingFields& fields, const FilingFacts& facts)
{
    return itemFromPiece({{&photo, stamps}}, fields, facts);
}

models::ItemRecord itemFromPiece(const std::vector<PhotoWork>& piece, const FilingFields& fields,
                                 const FilingFacts& facts)
{
    models::ItemRecord item;
    for (const PhotoWork& work : piece)
        item.photos.push_back(flow::photoRecord(*work.photo));
    for (const RecordSlot& slot : slotsOf(piece)) {
        models::StampRecord stamp =
            stampRecord(*piece[slot.photo].photo, piece[slot.photo].stamps[slot.work], facts);
        if (slot.stamp == item.stamps.size())
            item.stamps.push_back(std::move(stamp));
        else
            item.stamps[slot.stamp].views.push_back(stamp.views.front());
    }
    putFields(item, fields);
    if (auto attribution = conclusionOf(fields, facts.register_sha256))
        item.attributions.push_back(std::move(*attribution));
    return item;
}

std::vector<StampWork> workFromItem(const models::ItemRecord& item, const std::string& photo_sha256)
{
    std::vector<StampWork> stamps;
    for (const models::StampRecord& stamp : item.stamps)
        for (const models::ViewRecord& view : stamp.views) {
            if (view.photo_sha256 != photo_sha256)
                continue;
            StampWork work;
            work.id = view.id;
            for (std::size_t i = 0; i < 4; ++i)
                work.outline.corners[i] = {static_cast<float>(view.outline_px[2 * i]),
                                           static_cast<float>(view.outline_px[2 * i + 1])};
            if (&view != &stamp.views.front())
                work.view_of = stamp.views.front().id;
            work.outline.score = 1;
            work.outline.up_deg = view.up_deg;
            takeRecorded(work, view.readings);
            stamps.push_back(std::move(work));
        }
    return stamps;
}

std::vector<StampWork> workFromObject(const models::ItemRecord& item)
{
    std::vector<StampWork> stamps;
    for (const models::StampRecord& stamp : item.stamps)
        if (stamp.views.empty()) {
            stamps.emplace_back().id = stampKey(stamp);
            takeRecorded(stamps.back(), stamp.readings);
        }
    return stamps;
}

}  // namespace gui
