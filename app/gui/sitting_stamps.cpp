// What comes back from the worker for stamps read again, troubles and stops.
#include <iterator>
#include <utility>

#include "app/gui/sitting.h"

namespace gui {

// Only what is asked for last is read: what an earlier request of the same stamp brings is late.
void Sitting::readStaleStamps()
{
    WorkSession* here = session();
    if (!here || here->photo().pixels.empty())
        return;
    for (const StampWork& stamp : here->stamps()) {
        if (!stamp.stale && stamp.examined)
            continue;
        for (auto it = stamp_tickets_.begin(); it != stamp_tickets_.end();) {
            const bool late = it->second == std::pair(place_, stamp.id);
            if (late)
                worker_.cancel(it->first);
            it = late ? stamp_tickets_.erase(it) : std::next(it);
        }
        stopAhead();  // nobody waits for that
        const int ticket = worker_.examineStamp(
            here->photo(), {stamp.outline, stamp.mirrored, stamp.turned}, here->fields().type_id);
        stamp_tickets_[ticket] = {place_, stamp.id};
        Q_EMIT progressed(tr("reading the stamp again"), 0);
    }
}

// When nothing that somebody waits for is being read, reading ahead goes on.
void Sitting::rest()
{
    if (isBusy())
        return;
    Q_EMIT idle();
    readAhead();
}

void Sitting::takeStamp(int ticket, std::shared_ptr<const flow::StampExamination> examination)
{
    const auto found = stamp_tickets_.find(ticket);
    if (found == stamp_tickets_.end())
        return;
    const auto [place, stamp_id] = found->second;
    stamp_tickets_.erase(found);
    if (WorkSession* session = places_[place].session.get())
        session->takeStampExamination(stamp_id, std::move(examination));
    rest();
}

void Sitting::takeTrouble(int ticket, const QString& sentence)
{
    const bool photo = ticket != 0 && ticket == photo_ticket_;
    if (photo) {
        photo_ticket_ = 0;
        queue_.setTrouble(place_, sentence);
    }
    if (ticket != 0 && ticket == ahead_ticket_) {
        ahead_ticket_ = 0;
        queue_.setTrouble(ahead_place_, sentence);  // said when that photo is gone to
        tellAhead();
    }
    const bool stamp = stamp_tickets_.erase(ticket) > 0;
    if (photo && record()) {  // what is filed can be seen and corrected all the same
        layWithoutPhoto(place_);
        Q_EMIT sessionChanged();
        Q_EMIT troubled(tr("%1 The record is opened without its picture.").arg(sentence));
    } else if (photo || stamp || ticket == 0 || ticket == rank_ticket_) {
        Q_EMIT troubled(sentence);
    }
    rest();
}

void Sitting::takeStop(int ticket)
{
    if (ticket == photo_ticket_) {
        photo_ticket_ = 0;
        queue_.setState(place_, stateOf(place_));
        Q_EMIT noted(
            tr("Reading %1 was stopped; opening it again starts anew.").arg(queue_.name(place_)));
    }
    if (stamp_tickets_.erase(ticket) > 0 && stamp_tickets_.empty())
        Q_EMIT noted(tr("Reading the stamp again was stopped; move the outline to start anew."));
    rest();
}

}  // namespace gui
