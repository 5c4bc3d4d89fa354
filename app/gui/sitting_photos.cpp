// Photos gone to, read and laid on the table.
#include <utility>

#include "app/gui/sitting.h"

namespace gui {

void Sitting::goTo(int place)
{
    if (place < 0 || place >= queue_.rowCount())
        return;
    stop();
    if (photo_ticket_ != 0)
        queue_.setState(place_, stateOf(place_));
    photo_ticket_ = 0;  // what is still on its way belongs to a photo put aside
    stamp_tickets_.clear();
    keepDraftsQuietly();
    place_ = place;
    candidates_.reset();
    dating_.reset();
    Q_EMIT candidatesChanged();
    if (!places_[place].session)
        startReading(place);
    else
        makeRoom();
    if (session()) {
        Q_EMIT idle();
        outline_pause_.start();
        rank_pause_.start();
    }
    Q_EMIT sessionChanged();
    readAhead();
}

void Sitting::startReading(int place)
{
    if (!queue_.recordAt(place).empty())
        return layWithoutPhoto(place);
    if (opened_place_ == place && !places_[place].draft && places_[place].filed_as.empty()) {
        opened_place_ = -1;
        lay(place, *std::exchange(opened_, {}).examination);
        return;
    }
    if (ahead_ticket_ != 0 && ahead_place_ == place && !places_[place].draft) {
        photo_ticket_ = std::exchange(ahead_ticket_, 0);
    } else {
        stopAhead();
        photo_ticket_ = requestPhoto(place);
    }
    queue_.setState(place, PhotoState::Reading);
    Q_EMIT progressed(tr("opening the photo"), 0);
}

// As it was read ahead, or with the stamps of its draft or record, or anew.
int Sitting::requestPhoto(int place)
{
    Place& here = places_[place];
    const std::filesystem::path file = queue_.file(place);
    if (!here.draft && !here.filed_as.empty())
        if (const auto item = look(here.filed_as))
            takeRecord(here, *item, file);
    if (auto draft = here.draft ? std::nullopt : drafts_.of(file);
        draft && draft->record_id.empty())
        here.draft = std::move(draft);
    if (!here.draft)
        return here.ahead ? worker_.openAgain(file, here.ahead, {})
                          : worker_.examinePhoto(file, {});
    std::vector<StampRequest> stamps;
    for (const StampWork& stamp : here.draft->stamps)
        stamps.push_back({stamp.outline, stamp.mirrored, stamp.turned});
    return worker_.examineOutlines(file, stamps, here.draft->fields.type_id);
}

void Sitting::takePhoto(int ticket, const OpenedPhoto& photo)
{
    if (ticket != 0 && ticket == ahead_ticket_)
        return takeAhead(photo);
    if (ticket != photo_ticket_)
        return;
    photo_ticket_ = 0;
    queue_.setPicture(place_, photo.card);
    places_[place_].ahead = std::make_shared<const ReadAhead>(withoutPixels(*photo.examination));
    lay(place_, *photo.examination);
    Q_EMIT idle();
    Q_EMIT sessionChanged();
    readAhead();
}

// An examined photo becomes work.
void Sitting::lay(int place, const flow::Examination& examination)
{
    Place& here = places_[place];
    here.put_aside = false;
    std::vector<StampWork> stamps = workFromExamination(examination);
    here.session = std::make_unique<WorkSession>(examination.photo, options_.author);
    const bool drafted = here.draft.has_value();
    const auto [stamp, cell] =
        drafted ? std::pair(here.draft->current, here.draft->place) : std::pair(0, CellPlace{});
    if (!drafted)
        layWaiting(here, stamps);
    layDraft(here, examination.photo, stamps);
    here.session->setStamps(std::move(stamps));
    if (drafted)  // it goes with its letters, where the table may be a step ahead
        here.session->returnTo(stamp, cell);
    else if (returning_ && returning_->place == place)
        here.session->returnTo(returning_->stamp, returning_->cell);
    if (returning_ && returning_->place == place)
        returning_.reset();
    if (!drafted)
        here.session->takeLent(asBefore());
    if (!drafted)
        for (const int other : piecePlaces(place))
            if (other != place && places_[other].session)
                here.session->takeFields(places_[other].session->fields());
    listen(place, here.session.get());
    queue_.setState(place, stateOf(place));
    makeRoom();
    sayWhatWasFound(examination.photo, here.session->stamps().size());
    rank_pause_.start();
}

}  // namespace gui
