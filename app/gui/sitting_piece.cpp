// Photos of one piece.
#include <algorithm>

#include "app/gui/change_command.h"
#include "app/gui/sitting.h"

namespace gui {

std::vector<int> Sitting::piecePlaces(int place) const
{
    if (place < 0 || place >= queue_.rowCount())
        return {};
    const int with = queue_.pieceOf(place);
    const int first = with < 0 ? place : with;
    std::vector<int> places;
    for (int other = 0; other < queue_.rowCount(); ++other)
        if (other == first || queue_.pieceOf(other) == first)
            places.push_back(other);
    return places;
}

void Sitting::putPiece(int place, int with)
{
    queue_.setPiece(place, with);
    if (with >= 0 && places_[place].session && places_[with].session)
        places_[place].session->takeFields(places_[with].session->fields());
    draft_pause_.start();
    rank_pause_.start();
    keepSoon();
    Q_EMIT sessionChanged();
}

// Not in the stack of the photo in hand, which need not be one of those it is about.
void Sitting::noteOnTable(const QString& what, int place, const std::function<void()>& undo,
                          const std::function<void()>& redo)
{
    const auto unlessFiled = [this, place](const std::function<void()>& change) {
        return [this, place, change] {
            if (places_[place].filed_as.empty())
                return change();
            Q_EMIT noted(
                tr("%1 was filed since; it stays as it was filed.").arg(queue_.name(place)));
        };
    };
    table_undo_.push(new ChangeCommand(what, unlessFiled(undo), unlessFiled(redo)));
}

bool Sitting::mayJoin(int place, int with)
{
    if (!places_[place].filed_as.empty() || !places_[with].filed_as.empty()) {
        Q_EMIT noted(
            tr("A photo that is filed stays as it was filed; put photos together before "
               "you file them."));
        return false;
    }
    if (piecePlaces(place).size() > 1 && queue_.pieceOf(place) < 0) {
        Q_EMIT noted(tr("Others are put together with this photo; lay it out first."));
        return false;
    }
    return true;
}

void Sitting::joinPiece(int place, int with)
{
    if (place < 0 || with < 0 || place == with)
        return Q_EMIT noted(tr("There is no photo before this one to put it together with."));
    if (!mayJoin(place, with))
        return;
    const int first = queue_.pieceOf(with) < 0 ? with : queue_.pieceOf(with);
    const int before = queue_.pieceOf(place);
    const int after = before == first ? -1 : first;
    putPiece(place, after);
    noteOnTable(
        tr("photos of one piece"), place, [this, place, before] { putPiece(place, before); },
        [this, place, after] { putPiece(place, after); });
    Q_EMIT noted(after < 0 ? tr("%1 is a piece of its own again.").arg(queue_.name(place))
                           : tr("%1 shows the same piece as %2; they are filed as one record. "
                                "Ctrl+E says which stamps are the same.")
                                 .arg(queue_.name(place), queue_.name(first)));
}

// What is said of a piece is said of all its photos.
void Sitting::shareFields(int place)
{
    const FilingFields fields = places_[place].session->fields();
    for (const int other : piecePlaces(place))
        if (other != place && places_[other].session)
            places_[other].session->takeFields(fields);
}

// One reading a stamp: of several views the one in which most was read.
std::vector<models::Reading> Sitting::evidence() const
{
    std::map<std::string, std::pair<std::size_t, models::Reading>> best;
    std::vector<std::string> order;
    for (const int place : piecePlaces(place_)) {
        const auto found = places_.find(place);
        const WorkSession* session = found == places_.end() ? nullptr : found->second.session.get();
        if (!session)
            continue;
        const std::vector<models::Reading> readings = session->readings();
        for (std::size_t i = 0; i < readings.size(); ++i) {
            const StampWork& stamp = session->stamps()[i];
            const std::string id = stamp.view_of.empty() ? stamp.id : stamp.view_of;
            std::size_t read = 1;
            for (const models::Line& line : readings[i].lines)
                for (const models::Cell& cell : line.cells)
                    read += cell.state == models::CellState::Clear ? 1 : 0;
            if (!best.count(id))
                order.push_back(id);
            auto& kept = best[id];
            if (read > kept.first)
                kept = {read, readings[i]};
        }
    }
    std::vector<models::Reading> evidence;
    for (const std::string& id : order)
        evidence.push_back(best[id].second);
    return evidence;
}

}  // namespace gui
