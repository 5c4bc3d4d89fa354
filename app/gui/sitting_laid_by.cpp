// Photos set aside or taken off the table, how far each is, and what is undone of that.
#include <utility>

#include "app/gui/change_command.h"
#include "app/gui/sitting.h"

namespace gui {

// What is on the disk counts as well as what is in memory: a draft is work begun.
PhotoState Sitting::stateOf(int place) const
{
    const auto found = places_.find(place);
    const Place none;
    const Place& there = found == places_.end() ? none : found->second;
    if (there.record || !there.filed_as.empty())
        return PhotoState::Filed;
    if (there.set_aside)
        return PhotoState::SetAside;
    if (there.session && there.session->stamps().empty())
        return PhotoState::NoStamp;
    if (there.session)
        return isUnfiled(there) ? PhotoState::Begun : PhotoState::Read;
    const auto draft = there.draft ? there.draft : drafts_.of(queue_.file(place));
    if (draft && draft->record_id.empty())
        return draft->stamps.empty() ? PhotoState::NoStamp : PhotoState::Begun;
    if (there.ahead)
        return there.ahead->stamps.empty() ? PhotoState::NoStamp : PhotoState::Read;
    return PhotoState::ToRead;
}

void Sitting::putSetAside(int place, bool aside)
{
    places_[place].set_aside = aside;
    if (ahead_place_ == place)
        stopAhead();
    if (place != place_ || photo_ticket_ == 0)
        queue_.setState(place, stateOf(place));
    tellAhead();
    keepSoon();
    Q_EMIT sessionChanged();
    readAhead();
}

void Sitting::setAside(int place)
{
    if (place < 0)
        return Q_EMIT noted(tr("There is no photo to set aside."));
    if (stateOf(place) == PhotoState::Filed)
        return Q_EMIT noted(
            tr("%1 is filed already; there is nothing left to set aside.").arg(queue_.name(place)));
    const bool aside = !places_[place].set_aside;
    putSetAside(place, aside);
    table_undo_.push(new ChangeCommand(
        tr("set aside"), [this, place, aside] { putSetAside(place, !aside); },
        [this, place, aside] { putSetAside(place, aside); }));
    Q_EMIT noted(aside ? tr("%1 is set aside: Ctrl+N passes over it until Ctrl+Shift+N takes it "
                            "up again.")
                             .arg(queue_.name(place))
                       : tr("%1 is to be worked on again.").arg(queue_.name(place)));
}

void Sitting::clearHands()
{
    stop();
    photo_ticket_ = 0;
    stamp_tickets_.clear();
    keepDraftsQuietly();
    place_ = -1;
    candidates_.reset();
    dating_.reset();
    Q_EMIT candidatesChanged();
    Q_EMIT idle();
    Q_EMIT sessionChanged();
}

void Sitting::putOnTable(int place, bool on, const Pieces& pieces)
{
    if (ahead_place_ == place)
        stopAhead();
    const bool in_hand = place == place_;
    for (const auto& [photo, with] : pieces)
        queue_.setPiece(photo, with);
    queue_.setOnTable(place, on);
    const int after = queue_.beside(place, +1);
    const int next = after >= 0 ? after : queue_.beside(place, -1);
    if (on && place_ < 0)
        goTo(place);
    else if (!on && in_hand)
        next >= 0 ? goTo(next) : clearHands();
    else
        Q_EMIT sessionChanged();
    tellAhead();
    keepSoon();
    readAhead();
}

// Others that show one piece with it stay together.
void Sitting::takeOff(int place)
{
    if (place < 0 || !queue_.isOnTable(place))
        return Q_EMIT noted(tr("There is no photo to take off the table."));
    Pieces before{{place, queue_.pieceOf(place)}}, after{{place, -1}};
    int first = -1;
    for (const int other : piecePlaces(place)) {
        if (other == place || queue_.pieceOf(place) >= 0)
            continue;
        before.emplace_back(other, place);
        after.emplace_back(other, first);
        first = first < 0 ? other : first;
    }
    const bool in_hand = place == place_;
    putOnTable(place, false, after);
    table_undo_.push(new ChangeCommand(
        tr("off the table"),
        [this, place, before, in_hand] {
            putOnTable(place, true, before);
            if (in_hand && place_ != place)
                goTo(place);
        },
        [this, place, after] { putOnTable(place, false, after); }));
    Q_EMIT noted(tr("%1 is off the table. The file and what was begun on it stay as they are; "
                    "Ctrl+Z lays it back.")
                     .arg(queue_.name(place)));
}

// The stack whose turn it is: what was changed last is undone first, and done again last.
QUndoStack* Sitting::stackInTurn(bool again)
{
    QUndoStack* photo = session() ? session()->undoStack() : nullptr;
    const auto change = [again](const QUndoStack& stack) {
        const int at = again ? stack.index() : stack.index() - 1;
        return static_cast<const ChangeCommand*>(stack.command(at));
    };
    const ChangeCommand* of_table = change(table_undo_);
    const ChangeCommand* of_photo = photo ? change(*photo) : nullptr;
    if (!of_table || !of_photo)
        return of_table ? &table_undo_ : photo;
    return again == (of_table->order() < of_photo->order()) ? &table_undo_ : photo;
}

void Sitting::undo()
{
    if (QUndoStack* stack = stackInTurn(false))
        stack->undo();
}

void Sitting::redo()
{
    if (QUndoStack* stack = stackInTurn(true))
        stack->redo();
}

}  // namespace gui
