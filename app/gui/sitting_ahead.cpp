// Reading ahead, and what stays in memory.
#include <algorithm>
#include <utility>

#include "app/gui/sitting.h"

namespace gui {

namespace {

constexpr std::size_t most_photos_in_memory = 3;  // a large one takes 150 MB
constexpr std::size_t most_begun_in_memory = 6;   // undo goes with those that leave

}  // namespace

void Sitting::setReadsAhead(bool on)
{
    reads_ahead_ = on;
    if (on)
        readAhead();
    else
        stopAhead();
    tellAhead();
    keepSoon();
}

void Sitting::stopAhead()
{
    if (ahead_ticket_ == 0)
        return;
    worker_.cancel(std::exchange(ahead_ticket_, 0));
    if (queue_.state(ahead_place_) == PhotoState::Reading)
        queue_.setState(ahead_place_, stateOf(ahead_place_));
}

// One photo at a time, and only while nobody waits for another: first the next one is made ready,
// then the nearest that was not read yet.
void Sitting::readAhead()
{
    if (!reads_ahead_ || isBusy() || ahead_ticket_ != 0 || queue_.rowCount() == 0)
        return;
    const auto fresh = [this](int place) {
        const Place& there = places_[place];
        return !there.session && !there.draft && there.filed_as.empty();
    };
    const int next = queue_.nextUnfiled(place_);
    if (next >= 0 && next != opened_place_ && places_[next].ahead && fresh(next)) {
        ahead_place_ = next;
        ahead_ticket_ = worker_.openAgain(queue_.file(next), places_[next].ahead, {});
        return;
    }
    for (int i = 1; i <= queue_.rowCount(); ++i) {
        const int place = (place_ + i) % queue_.rowCount();
        if (place == place_ || !queue_.isOnTable(place))
            continue;
        if (queue_.state(place) != PhotoState::ToRead || places_[place].ahead || !fresh(place))
            continue;
        ahead_place_ = place;
        ahead_ticket_ = worker_.examinePhoto(queue_.file(place), {});
        queue_.setState(place, PhotoState::Reading);
        return;
    }
}

void Sitting::takeAhead(const OpenedPhoto& photo)
{
    ahead_ticket_ = 0;
    Place& there = places_[ahead_place_];
    if (!there.ahead)
        there.ahead = std::make_shared<const ReadAhead>(withoutPixels(*photo.examination));
    if (queue_.state(ahead_place_) == PhotoState::Reading)
        queue_.setState(ahead_place_, stateOf(ahead_place_));
    queue_.setPicture(ahead_place_, photo.card);
    if (there.waiting.empty() && !there.session && there.filed_as.empty())
        keepWaiting(ahead_place_, workFromExamination(*photo.examination),
                    photo.examination->photo.pixels.size());
    if (ahead_place_ == queue_.nextUnfiled(place_)) {
        opened_place_ = ahead_place_;
        opened_ = photo;
    }
    tellAhead();
    readAhead();
}

void Sitting::tellAhead()
{
    int read = 0;
    for (int place = 0; place < queue_.rowCount(); ++place) {
        const PhotoState state = queue_.state(place);
        const bool is_read = state != PhotoState::ToRead && state != PhotoState::Reading;
        read += is_read && queue_.isOnTable(place) ? 1 : 0;
    }
    Q_EMIT aheadChanged(read, queue_.onTable());
}

bool Sitting::mayLeave(int place) const
{
    const auto found = places_.find(place);
    if (place == place_ || found == places_.end() || !found->second.session)
        return false;
    const auto piece = piecePlaces(place_);
    return std::find(piece.begin(), piece.end(), place) == piece.end();
}

// Photos that have waited longest leave memory. Work that was begun stays longer, since what could
// be undone goes with it; it comes back from its draft, as a filed one does from its record.
void Sitting::makeRoom()
{
    recent_.erase(std::remove(recent_.begin(), recent_.end(), place_), recent_.end());
    recent_.push_back(place_);
    const auto takeOldest = [this](bool begun) {
        const auto oldest = std::find_if(recent_.begin(), recent_.end(), [&](int place) {
            return mayLeave(place) && (begun || !isUnfiled(places_[place]));
        });
        if (oldest == recent_.end())
            return false;
        Place& there = places_[*oldest];
        there.put_aside = isWorthKeeping(there);
        if (there.put_aside)
            there.draft = draftOf(*oldest, there);
        else if (there.record)
            there.record.reset();
        if (there.filed_as.empty())
            keepWaiting(*oldest, there.session->stamps(), there.session->photo().pixels.size());
        there.session.reset();
        tellStamps(*oldest);
        recent_.erase(oldest);
        return true;
    };
    while (recent_.size() > most_photos_in_memory && takeOldest(false)) {
    }
    while (recent_.size() > most_begun_in_memory && takeOldest(true)) {
    }
}

}  // namespace gui
