#include "app/gui/work_session.h"

#include <QTextBoundaryFinder>
#include <QUuid>
#include <algorithm>
#include <iterator>
#include <utility>

#include "app/gui/change_command.h"

namespace gui {

WorkSession::WorkSession(vision::Photo photo, std::string person, QObject* parent)
    : QObject(parent), photo_(std::move(photo)), person_(std::move(person))
{
}

const StampWork* WorkSession::stamp() const
{
    return current_ < 0 ? nullptr : &stamps_[static_cast<std::size_t>(current_)];
}

StampWork* WorkSession::find(const std::string& stamp_id)
{
    const auto found = std::find_if(stamps_.begin(), stamps_.end(),
                                    [&](const auto& stamp) { return stamp.id == stamp_id; });
    return found == stamps_.end() ? nullptr : &*found;
}

std::vector<models::Reading> WorkSession::readings() const
{
    std::vector<models::Reading> readings;
    for (const StampWork& stamp : stamps_)
        readings.push_back(personsReading(stamp.shown, person_));
    return readings;
}

std::vector<StampWork> WorkSession::stampsToFile() const
{
    std::vector<StampWork> worth;
    std::copy_if(stamps_.begin(), stamps_.end(), std::back_inserter(worth),
                 [&](const StampWork& stamp) { return isWorthFiling(stamp, person_); });
    return worth;
}

bool WorkSession::isTouched() const
{
    return undo_.index() > 0 || fields_ != FilingFields{} ||
           std::any_of(stamps_.begin(), stamps_.end(),
                       [&](const auto& stamp) { return gui::isTouched(stamp, person_); });
}

void WorkSession::setCurrent(int stamp)
{
    const int last = static_cast<int>(stamps_.size()) - 1;
    current_ = std::clamp(stamp, std::min(0, last), last);
    const StampWork* now = this->stamp();
    editor_ = ReadingEditor(now ? now->shown : models::Reading{}, person_);
    Q_EMIT stampChanged();
    Q_EMIT outlinesChanged();
    Q_EMIT placeChanged();
}

void WorkSession::leave(CellPlace from, CellPlace last_passed)
{
    if (current_ < 0)
        return;
    StampWork& now = stamps_[static_cast<std::size_t>(current_)];
    if (editor_.place() != from)
        for (CellPlace place = from; place <= last_passed; ++place.cell)
            now.seen.insert(place);
    const LettersSeen count = lettersSeen(now);
    if (now.gone_through || count.seen < count.all || count.all == 0)
        return;
    now.gone_through = true;
    Q_EMIT goneThrough();
}

void WorkSession::moveTo(CellPlace place)
{
    const CellPlace from = editor_.place();
    editor_.goTo(place);
    leave(from, from);
    Q_EMIT placeChanged();
}

void WorkSession::move(Move move)
{
    const CellPlace from = editor_.place();
    editor_.move(move);
    leave(from, from);
    Q_EMIT placeChanged();
}

void WorkSession::type(const QString& text)
{
    if (!stamp()) {
        Q_EMIT couldNot(tr("There is no stamp to write into; outline one in the photo first."));
        return;
    }
    QTextBoundaryFinder finder(QTextBoundaryFinder::Grapheme, text);
    for (qsizetype start = 0, end = 0; (end = finder.toNextBoundary()) > start; start = end) {
        const models::Reading before = editor_.reading();
        const CellPlace from = editor_.place();
        change(editor_.type(text.mid(start, end - start).toStdString()), before, from, from);
    }
}

void WorkSession::apply(Edit edit)
{
    if (!stamp()) {
        Q_EMIT couldNot(tr("There is no stamp to read; outline one in the photo first."));
        return;
    }
    const models::Reading before = editor_.reading();
    const CellPlace from = editor_.place();
    const EditOutcome outcome = editor_.apply(edit);
    CellPlace last_passed = from;
    if (edit == Edit::AcceptLine && from.line < before.lines.size())
        last_passed.cell = std::max(from.cell, before.lines[from.line].cells.size());
    change(outcome, before, from, last_passed);
}

void WorkSession::change(const EditOutcome& outcome, const models::Reading& before, CellPlace from,
                         CellPlace last_passed)
{
    if (!outcome.why_not.empty())
        Q_EMIT couldNot(QString::fromStdString(outcome.why_not));
    if (outcome.changed) {
        StampWork& now = stamps_[static_cast<std::size_t>(current_)];
        now.shown = editor_.reading();
        now.read_in_view = now.read_in_view || candidates_in_view_;
        const cv::Matx33d frame = now.photo_from_rectified.value_or(cv::Matx33d::eye());
        const auto put = [this, id = now.id, frame](const models::Reading& reading,
                                                    CellPlace place) {
            return [this, id, frame, reading, place] { putLetters(id, reading, place, frame); };
        };
        undo_.push(new ChangeCommand(tr("letters"), put(before, from),
                                     put(editor_.reading(), editor_.place())));
        Q_EMIT lettersChanged();
        Q_EMIT workChanged();
    }
    leave(from, last_passed);
    Q_EMIT placeChanged();
}

void WorkSession::putLetters(const std::string& stamp_id, const models::Reading& reading,
                             CellPlace place, const cv::Matx33d& photo_from_rectified)
{
    StampWork* stamp = find(stamp_id);
    if (!stamp)
        return;
    stamp->shown = reading;
    const cv::Matx33d now = stamp->photo_from_rectified.value_or(photo_from_rectified);
    if (now != photo_from_rectified)
        stamp->shown = movedReading(reading, photo_from_rectified, now);
    const int index = static_cast<int>(stamp - stamps_.data());
    if (index != current_)
        setCurrent(index);
    editor_.put(stamp->shown, place);
    Q_EMIT lettersChanged();
    Q_EMIT placeChanged();
    Q_EMIT workChanged();
}

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
    pushStamps(tr("outline taken out"), std::move(after), std::max(0, stamp - 1), -1);
}

void WorkSession::turnMirrored()
{
    if (current_ < 0) {
        Q_EMIT couldNot(tr("There is no stamp to turn; outline one in the photo first."));
        return;
    }
    std::vector<StampWork> after = stamps_;
    StampWork& turned = after[static_cast<std::size_t>(current_)];
    turned.mirrored = !turned.mirrored;
    turned.stale = true;
    pushStamps(tr("mirror image"), std::move(after), current_, -1);
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

void WorkSession::setCandidatesInView(bool in_view, bool opened_by_key)
{
    candidates_in_view_ = in_view;
    if (current_ < 0 || !in_view)
        return;
    StampWork& now = stamps_[static_cast<std::size_t>(current_)];
    if (opened_by_key && !now.gone_through && !now.looked_ahead) {
        now.looked_ahead = true;
        Q_EMIT workChanged();
    }
}

void WorkSession::setFields(const FilingFields& fields)
{
    if (fields == fields_)
        return;
    fields_ = fields;
    Q_EMIT workChanged();
}

}  // namespace gui
