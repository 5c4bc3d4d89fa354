// What is kept while working, and taken up again.
#include <utility>

#include "app/gui/record_page.h"
#include "app/gui/sitting.h"

namespace gui {

void Sitting::setWindowState(const WindowState& state)
{
    window_ = state;
    keepSoon();
}

// After what is going on now, so that a key that changes several things is kept once.
void Sitting::keepSoon()
{
    if (!keep_pause_.isActive())
        keep_pause_.start();
}

// Where one is, and the work in hand: this survives the end of the program at any moment.
void Sitting::keepNow()
{
    keep_pause_.stop();
    if (left_)
        return;
    TableState state;
    const auto kept_as = [this](int place) {  // those off the table are left out
        return place >= 0 && queue_.isOnTable(place) ? queue_.numberOf(place) - 1 : -1;
    };
    for (int place = 0; place < queue_.rowCount(); ++place)
        if (queue_.isOnTable(place))
            state.photos.push_back({queue_.file(place), kept_as(queue_.pieceOf(place)),
                                    places_[place].filed_as, places_[place].set_aside});
    state.place = kept_as(place_);
    if (const WorkSession* here = session()) {
        state.stamp = here->current();
        state.cell = here->editor().place();
    } else if (returning_) {
        state.stamp = returning_->stamp;
        state.cell = returning_->cell;
    }
    state.ahead_paused = !reads_ahead_;
    state.window = window_;
    keepTable(options_.archive_folder / "table.json", state);
    const Place* here = current();
    if (!here || !here->session || !isWorthKeeping(*here))
        return;
    try {
        drafts_.keep(draftOf(place_, *here), true);
    } catch (const DraftError&) {
        draft_pause_.start();  // it will be tried again, and told, then
    }
}

// Photos that are filed need not lie there next time.
void Sitting::leaveTable()
{
    keepNow();
    left_ = true;
    TableState state = keptTable(options_.archive_folder / "table.json").value_or(TableState{});
    TableState rest = state;
    rest.photos.clear();
    std::map<int, int> place_of;
    for (int i = 0; i < static_cast<int>(state.photos.size()); ++i) {
        TableState::Laid laid = state.photos[static_cast<std::size_t>(i)];
        if (!laid.filed_as.empty())
            continue;
        place_of[i] = static_cast<int>(rest.photos.size());
        laid.piece = place_of.count(laid.piece) ? place_of[laid.piece] : -1;
        rest.photos.push_back(laid);
    }
    rest.place = place_of.count(state.place) ? place_of[state.place] : -1;
    keepTable(options_.archive_folder / "table.json", rest);
}

// Its place; -1 where the photo, or the record without one, is gone.
int Sitting::layOutAgain(const TableState::Laid& laid)
{
    if (laid.photo.empty()) {
        const auto item = laid.filed_as.empty() ? std::nullopt : look(laid.filed_as);
        return item ? queue_.addRecord(item->id, recordName(*item)) : -1;
    }
    std::error_code unknown;
    return std::filesystem::exists(laid.photo, unknown) ? queue_.add(laid.photo) : -1;
}

std::optional<WindowState> Sitting::restoreTable()
{
    const auto filed = putAwayFiledDrafts();
    auto kept = keptTable(options_.archive_folder / "table.json");
    if (!kept)
        return std::nullopt;
    reads_ahead_ = reads_ahead_ && !kept->ahead_paused;
    window_ = kept->window;
    if (kept->photos.empty())
        return window_;
    std::map<int, int> place_of;  // in the table as it was -> now
    for (int i = 0; i < static_cast<int>(kept->photos.size()); ++i) {
        TableState::Laid& laid = kept->photos[static_cast<std::size_t>(i)];
        if (const auto as = filed.find(laid.photo); as != filed.end())
            laid.filed_as = as->second;
        const int place = layOutAgain(laid);
        if (place < 0)
            continue;
        place_of[i] = place;
        places_[place].filed_as = laid.filed_as;
        places_[place].set_aside = laid.set_aside;
        queue_.setState(place, stateOf(place));
        if (place_of.count(laid.piece) && place_of[laid.piece] != place)
            queue_.setPiece(place, place_of[laid.piece]);
    }
    const auto in_hand = place_of.find(kept->place);
    if (in_hand != place_of.end()) {
        returning_ = *kept;
        returning_->place = in_hand->second;
        goTo(in_hand->second);
    } else if (queue_.rowCount() > 0) {
        goTo(0);
    }
    tellAhead();
    window_ = kept->window;
    return window_;
}

QStringList Sitting::unfiled(bool laid_by_too) const
{
    QStringList names;
    for (const auto& [place, work] : places_) {
        const PhotoState state = queue_.state(place);
        const bool laid_by = !queue_.isOnTable(place) || state == PhotoState::SetAside ||
                             state == PhotoState::NoStamp;
        if (isUnfiled(work) && (laid_by_too || !laid_by))
            names << queue_.name(place);
    }
    return names;
}

}  // namespace gui
