// Stamps added, moved, turned and taken out.
#include <QUuid>
#include <algorithm>
#include <utility>

#include "app/gui/change_command.h"
#include "app/gui/work_session.h"

namespace gui {

void WorkSession::setStamps(std::vector<StampWork> stamps)
{
    for (StampWork& stamp : stamps)
        if (stamp.id.empty())
            stamp.id = QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString();
    undo_.clear();
    putStamps(std::move(stamps), 0);
}

void WorkSession::putStamps(std::vector<StampWork> stamps, int current)
{
    // That candidates were seen cannot be undone.
    for (StampWork& stamp : stamps)
        if (const StampWork* was = find(stamp.id)) {
            stamp.looked_ahead = stamp.looked_ahead || was->looked_ahead;
            stamp.read_in_view = stamp.read_in_view || was->read_in_view;
        }
    stamps_ = std::move(stamps);
    setCurrent(current);
    Q_EMIT lettersChanged();
    Q_EMIT workChanged();
    wantExaminations();
}

void WorkSession::wantExaminations()
{
    std::vector<std::string> wanted;  // a listener may change the stamps
    for (const StampWork& stamp : stamps_)
        if (stamp.stale || !stamp.examined)
            wanted.push_back(stamp.id);
    for (const std::string& id : wanted)
        Q_EMIT examinationWanted(QString::fromStdString(id));
}

void WorkSession::pushStamps(const QString& what, std::vector<StampWork> after, int current_after,
                             int joins_key)
{
    const auto put = [this](const std::vector<StampWork>& stamps, int current) {
        return [this, stamps, current] { putStamps(stamps, current); };
    };
    auto command =
        new ChangeCommand(what, put(stamps_, current_), put(after, current_after), joins_key);
    putStamps(std::move(after), current_after);
    undo_.push(command);
}

void WorkSession::setOutline(int stamp, const vision::Quad& corners, int gesture)
{
    std::vector<StampWork> after = stamps_;
    StampWork& moved = after.at(static_cast<std::size_t>(stamp));
    const double up_deg = moved.outline.up_deg;
    moved.outline = vision::outlineFromCorners(corners);
    moved.outline.up_deg = up_deg;
    // Letters confirmed as they stand say which way is up.
    moved.turned = moved.turned || hasConfirmed(moved.shown, person_);
    moved.stale = true;
    pushStamps(tr("outline"), std::move(after), stamp, gesture);
}

void WorkSession::addOutline(const vision::Quad& corners)
{
    std::vector<StampWork> after = stamps_;
    StampWork added;
    added.id = QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString();
    added.outline = vision::outlineFromCorners(corners);
    after.push_back(std::move(added));
    const int last = static_cast<int>(after.size()) - 1;
    pushStamps(tr("new outline"), std::move(after), last, -1);
}

void WorkSession::deleteOutline(int stamp)
{
    std::vector<StampWork> after = stamps_;
    after.erase(after.begin() + stamp);
    pushStamps(tr("outline taken out"), std::move(after), stamp, -1);
}

void WorkSession::deleteOtherOutlines(const std::set<std::string>& kept)
{
    const auto is_other = [&](const StampWork& stamp) {
        return !hasConfirmed(stamp.shown, person_) && kept.count(stamp.id) == 0;
    };
    const auto others = std::count_if(stamps_.begin(), stamps_.end(), is_other);
    if (others == 0 || others == static_cast<std::ptrdiff_t>(stamps_.size())) {
        Q_EMIT couldNot(others == 0 ? tr("Every stamp has letters that you confirmed or is filed; "
                                         "none was taken out.")
                                    : tr("No stamp has confirmed letters yet; confirm those of the "
                                         "stamps that are there, then this takes the others out."));
        return;
    }
    const auto here = stamps_.begin() + current_;
    const auto before = std::count_if(stamps_.begin(), here, is_other);
    std::vector<StampWork> after = stamps_;
    std::erase_if(after, is_other);
    pushStamps(tr("outlines taken out"), std::move(after), current_ - static_cast<int>(before), -1);
}

void WorkSession::turnMirrored()
{
    if (current_ < 0) {
        Q_EMIT couldNot(tr("There is no stamp to turn; outline one in the photo first."));
        return;
    }
    if (photo_.pixels.empty()) {
        Q_EMIT couldNot(tr("There is no photo of this stamp that could be turned."));
        return;
    }
    std::vector<StampWork> after = stamps_;
    StampWork& turned = after[static_cast<std::size_t>(current_)];
    turned.mirrored = !turned.mirrored;
    turned.stale = true;
    pushStamps(tr("mirror image"), std::move(after), current_, -1);
}

void WorkSession::turn(int quarters)
{
    if (current_ < 0) {
        Q_EMIT couldNot(tr("There is no stamp to turn; outline one in the photo first."));
        return;
    }
    std::vector<StampWork> after = stamps_;
    StampWork& turned = after[static_cast<std::size_t>(current_)];
    vision::Quad corners = turned.outline.corners;
    std::rotate(corners.begin(), corners.begin() + (4 - quarters % 4) % 4, corners.end());
    turned.outline = vision::outlineFromCorners(corners);
    turned.turned = true;
    turned.stale = true;
    pushStamps(tr("way up"), std::move(after), current_, -1);
}

void WorkSession::setViewOf(int stamp, const std::string& id)
{
    std::vector<StampWork> after = stamps_;
    after.at(static_cast<std::size_t>(stamp)).view_of = id;
    pushStamps(tr("view of a stamp"), std::move(after), stamp, -1);
}

void WorkSession::takeViewOf(const std::string& stamp_id, const std::string& id)
{
    StampWork* stamp = find(stamp_id);
    if (!stamp || stamp->view_of == id)
        return;
    stamp->view_of = id;
    Q_EMIT outlinesChanged();
    Q_EMIT workChanged();
}

void WorkSession::takeStampExamination(const std::string& stamp_id,
                                       std::shared_ptr<const flow::StampExamination> examined)
{
    StampWork* stamp = find(stamp_id);
    if (!stamp)
        return;
    takeExamination(*stamp, std::move(examined), person_);
    if (stamp - stamps_.data() == current_) {
        const CellPlace place = editor_.place();
        editor_.put(stamp->shown, place);
        Q_EMIT stampChanged();
        Q_EMIT lettersChanged();
        Q_EMIT placeChanged();
    }
    Q_EMIT outlinesChanged();
    Q_EMIT workChanged();
}

}  // namespace gui
