// What the record in hand says, what its evidence gives, and what it takes from the one before it.
#include <algorithm>
#include <utility>

#include "app/gui/sitting.h"
#include "models/archive/standing.h"

namespace gui {

std::vector<PhotoWork> Sitting::pieceWork() const
{
    std::vector<PhotoWork> piece;
    for (const int place : piecePlaces(place_)) {
        const auto found = places_.find(place);
        if (found != places_.end() && found->second.session)
            piece.push_back(
                {&found->second.session->photo(), found->second.session->stampsToFile()});
    }
    return piece;
}

models::ItemRecord Sitting::itemInHand() const
{
    const WorkSession* here = session();
    if (!here)
        return {};
    const FilingFacts facts{options_.author, options_.clock(), {}, {}};
    models::ItemRecord now = itemFromPiece(pieceWork(), here->fields(), facts);
    const RecordLink* filed = record();
    if (!filed)
        return now;
    models::ItemRecord item = filed->item;
    item.corrections.clear();  // what was taken back is not said any more
    const auto addOwn = [&](std::vector<models::ReadingRecord>& to,
                            const std::vector<models::ReadingRecord>& from) {
        if (from.empty() || from.back().reading.reader != options_.author)
            return;
        to.push_back(from.back());
        to.back().recorded_at = facts.now;
    };
    for (models::StampRecord& stamp : now.stamps) {
        const auto same = std::find_if(
            item.stamps.begin(), item.stamps.end(),
            [&](const models::StampRecord& one) { return stampKey(one) == stampKey(stamp); });
        if (same == item.stamps.end()) {
            item.stamps.push_back(std::move(stamp));
            continue;
        }
        if (same->views.empty())  // a stamp that stands in no photo
            addOwn(same->readings, stamp.views.front().readings);
        for (std::size_t i = 0; i < std::min(stamp.views.size(), same->views.size()); ++i)
            addOwn(same->views[i].readings, stamp.views[i].readings);
    }
    putFields(item, here->fields());
    if (concludesOtherwise(here->fields(), fieldsFromItem(filed->item)))
        if (auto conclusion = conclusionOf(here->fields(), {}))
            item.attributions.push_back(std::move(*conclusion));
    return item;
}

std::vector<models::AttributionRecord> Sitting::conclusions() const
{
    const RecordLink* filed = record();
    return filed ? models::standingAttributions(filed->item)
                 : std::vector<models::AttributionRecord>();
}

std::vector<std::string> Sitting::stampKeys() const
{
    std::vector<std::string> keys;
    const models::ItemRecord item = itemInHand();
    for (const models::StampRecord& stamp : item.stamps)
        keys.push_back(stampKey(stamp));
    return keys;
}

void Sitting::followDating(bool follow)
{
    follow_dating_ = follow;
    if (follow)
        date();
}

void Sitting::date()
{
    if (!session() || !follow_dating_)
        return;
    worker_.cancel(date_ticket_);
    date_ticket_ = worker_.dateRecord(itemInHand());
}

void Sitting::dateRecord(const models::ItemRecord& item)
{
    worker_.cancel(record_date_ticket_);
    record_dated_ = item.id;
    record_date_ticket_ = worker_.dateRecord(item);
}

void Sitting::takeDating(int ticket, std::shared_ptr<const std::vector<models::PartDating>> parts)
{
    if (ticket == record_date_ticket_)
        return Q_EMIT recordDated(QString::fromStdString(record_dated_), std::move(parts));
    if (ticket != date_ticket_ || !session())
        return;
    dating_ = std::move(parts);
    Q_EMIT dated();
}

// Type, owner and place of the item recorded last, for pieces that come in lots.
FilingFields Sitting::asBefore()
{
    if (!before_) {
        before_.emplace();
        if (models::Archive::isIn(options_.archive_folder))
            if (const auto last = archive().lastItem())
                lendFrom(*last);
    }
    return *before_;
}

void Sitting::lendFrom(const models::ItemRecord& item)
{
    before_.emplace();
    before_->type_id = item.type_id;
    before_->owner = item.owner;
    before_->place_found = item.place_found;
}

}  // namespace gui
