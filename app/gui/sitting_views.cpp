// Views of one stamp.
#include <QUuid>
#include <algorithm>
#include <utility>

#include "app/gui/sitting.h"

namespace gui {

void Sitting::turnViewOf()
{
    WorkSession* here = session();
    const StampWork* stamp = here ? here->stamp() : nullptr;
    if (!stamp)
        return Q_EMIT noted(tr("There is no stamp to be a view of another."));
    std::vector<std::pair<std::string, QString>> others{{std::string(), QString()}};
    for (const int place : piecePlaces(place_)) {
        const auto& stamps = stampsAt(place);
        for (std::size_t i = 0; i < stamps.size(); ++i) {
            const StampWork& other = stamps[i];
            if (other.id != stamp->id && other.view_of.empty())
                others.emplace_back(other.id,
                                    tr("stamp %1 of %2").arg(i + 1).arg(queue_.name(place)));
        }
    }
    if (others.size() == 1)
        return Q_EMIT noted(
            tr("There is no other stamp that this could be a view of; put the "
               "piece's photos together first (Ctrl+I)."));
    auto now = std::find_if(others.begin(), others.end(),
                            [&](const auto& other) { return other.first == stamp->view_of; });
    const auto next = now == others.end() || now + 1 == others.end() ? others.begin() : now + 1;
    here->setViewOf(here->current(), next->first);
    Q_EMIT noted(
        next->first.empty()
            ? tr("This stamp is one of its own.")
            : tr("This is another view of %1; together they count once.").arg(next->second));
}

const std::vector<StampWork>& Sitting::stampsAt(int place) const
{
    static const std::vector<StampWork> none;
    const auto there = places_.find(place);
    if (there == places_.end())
        return none;
    return there->second.session ? there->second.session->stamps() : there->second.waiting;
}

// Without what was read of them, which is much.
void Sitting::keepWaiting(int place, std::vector<StampWork> stamps, cv::Size photo_size)
{
    Place& there = places_[place];
    there.waiting.clear();
    for (const StampWork& stamp : stamps) {
        StampWork& kept = there.waiting.emplace_back();
        kept.id = stamp.id.empty()
                      ? QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString()
                      : stamp.id;
        kept.outline = stamp.outline;
        kept.view_of = stamp.view_of;
    }
    there.photo_size = photo_size;
    tellStamps(place);
}

// What was said of stamps before their photo was opened stands.
void Sitting::layWaiting(Place& here, std::vector<StampWork>& stamps) const
{
    const auto waiting = std::exchange(here.waiting, {});
    if (waiting.size() != stamps.size())
        return;
    for (std::size_t i = 0; i < stamps.size(); ++i) {
        stamps[i].id = waiting[i].id;
        stamps[i].view_of = waiting[i].view_of;
    }
}

const StampWork* Sitting::stampOnTable(const StampPlace& at) const
{
    const auto& stamps = stampsAt(at.place);
    const auto found = std::find_if(stamps.begin(), stamps.end(),
                                    [&](const StampWork& stamp) { return stamp.id == at.id; });
    return found == stamps.end() ? nullptr : &*found;
}

QString Sitting::wordsFor(const StampPlace& at) const
{
    const StampWork* stamp = stampOnTable(at);
    return tr("stamp %1 of %2")
        .arg(stamp - stampsAt(at.place).data() + 1)
        .arg(queue_.name(at.place));
}

QString Sitting::viewedInHand() const
{
    const StampWork* stamp = session() ? session()->stamp() : nullptr;
    for (const int place : piecePlaces(place_))
        if (stamp && !stamp->view_of.empty() && stampOnTable({place, stamp->view_of}))
            return wordsFor({place, stamp->view_of});
    return {};
}

// Those that were views of this one go with it.
std::vector<Sitting::ViewChange> Sitting::viewChanges(const StampPlace& view,
                                                      const std::string& of) const
{
    std::vector<ViewChange> changes{{view, stampOnTable(view)->view_of, of}};
    for (const int place : piecePlaces(view.place)) {
        for (const StampWork& stamp : stampsAt(place))
            if (!of.empty() && stamp.view_of == view.id)
                changes.push_back({{place, stamp.id}, view.id, of});
    }
    return changes;
}

void Sitting::putViews(const std::vector<ViewChange>& changes, bool after)
{
    for (const ViewChange& change : changes) {
        Place& there = places_[change.at.place];
        const std::string& of = after ? change.after : change.before;
        if (there.session)
            there.session->takeViewOf(change.at.id, of);
        const auto take = [&](std::vector<StampWork>& stamps) {
            for (StampWork& stamp : stamps)
                if (stamp.id == change.at.id)
                    stamp.view_of = of;
        };
        take(there.waiting);
        if (there.draft)
            take(there.draft->stamps);
        tellStamps(change.at.place);
    }
    draft_pause_.start();
    rank_pause_.start();
    keepSoon();
}

void Sitting::joinViews(const StampPlace& view, const StampPlace& of)
{
    const StampWork *one = stampOnTable(view), *other = stampOnTable(of);
    if (!one || !other || view == of)
        return;
    if (other->view_of == view.id)  // said the other way round it is the same
        return joinViews(of, view);
    const std::string first = other->view_of.empty() ? of.id : other->view_of;
    const bool apart = one->view_of == first;
    const auto piece = piecePlaces(view.place);
    const bool same_piece = std::find(piece.begin(), piece.end(), of.place) != piece.end();
    const bool is_filed = !places_[view.place].filed_as.empty();
    if ((is_filed || !same_piece) && !mayJoin(view.place, of.place))
        return;
    const auto changes = viewChanges(view, apart ? std::string() : first);
    const int before = queue_.pieceOf(view.place);
    const int after = same_piece                     ? before
                      : queue_.pieceOf(of.place) < 0 ? of.place
                                                     : queue_.pieceOf(of.place);
    const auto put = [this, changes, place = view.place](bool done, int with) {
        if (queue_.pieceOf(place) != with)
            putPiece(place, with);
        putViews(changes, done);
    };
    put(true, after);
    noteOnTable(
        tr("views of one stamp"), view.place, [put, before] { put(false, before); },
        [put, after] { put(true, after); });
    Q_EMIT noted(apart ? tr("%1 is a stamp of its own again.").arg(wordsFor(view))
                       : tr("%1 is another view of %2; together they count once.")
                             .arg(wordsFor(view), wordsFor(of)));
}

// The cards show where the stamps are, so that one can be laid on another.
void Sitting::tellStamps(int place)
{
    const Place& there = places_[place];
    const cv::Size photo = there.session ? there.session->photo().pixels.size() : there.photo_size;
    std::vector<StampOnCard> shown;
    for (const StampWork& stamp : stampsAt(place)) {
        if (photo.empty())
            break;
        StampOnCard card{stamp.id, {}, !stamp.view_of.empty()};
        for (const cv::Point2f& corner : stamp.outline.corners)
            card.outline << QPointF(1.0 * corner.x / photo.width, 1.0 * corner.y / photo.height);
        shown.push_back(std::move(card));
    }
    queue_.setStamps(place, std::move(shown));
}

}  // namespace gui
