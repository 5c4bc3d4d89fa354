#include "app/gui/work_session.h"

#include <QCoreApplication>
#include <QTextBoundaryFinder>
#include <algorithm>
#include <iterator>
#include <utility>

#include "app/gui/change_command.h"

namespace gui {

namespace {

// Keys under which changes that follow each other join, away from the gestures of the photo.
constexpr int fields_key = 1'000'000, typing_key = 2'000'000, turning_key = 3'000'000;

}  // namespace

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
    return undo_.index() > 0 || fields_ != lent_ ||
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
    tellGoneThrough();
}

void WorkSession::tellGoneThrough()
{
    StampWork& now = stamps_[static_cast<std::size_t>(current_)];
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
    if (edit == Edit::AcceptStamp)
        return acceptStamp();
    const models::Reading before = editor_.reading();
    const CellPlace from = editor_.place();
    const bool turns = edit == Edit::NextAlternative || edit == Edit::PreviousAlternative;
    if (turns && !editor_.turnedFrom())
        ++turnings_;
    const EditOutcome outcome = editor_.apply(edit);
    CellPlace last_passed = from;
    if (edit == Edit::AcceptLine && from.line < before.lines.size())
        last_passed.cell = std::max(from.cell, before.lines[from.line].cells.size());
    change(outcome, before, from, last_passed, turns ? turning_key + turnings_ : -1);
}

void WorkSession::write(const std::vector<models::Line>& typed, int gesture)
{
    if (!stamp())
        return;
    const models::Reading before = editor_.reading();
    const CellPlace from = editor_.place();
    change(editor_.write(typed), before, from, from, typing_key + gesture);
}

void WorkSession::restoreFrom(const std::string& mark)
{
    if (!stamp())
        return;
    const models::Reading before = editor_.reading();
    const CellPlace from = editor_.place();
    change(editor_.restoreFrom(mark), before, from, from);
}

void WorkSession::returnTo(int stamp, CellPlace place)
{
    if (stamps_.empty())
        return;
    setCurrent(stamp);
    editor_.goTo(place);
    Q_EMIT placeChanged();
}

void WorkSession::change(const EditOutcome& outcome, const models::Reading& before, CellPlace from,
                         CellPlace last_passed, int gesture)
{
    if (!outcome.why_not.empty())
        Q_EMIT couldNot(QCoreApplication::translate("gui::ReadingEditor", outcome.why_not.c_str()));
    if (outcome.changed) {
        StampWork& now = stamps_[static_cast<std::size_t>(current_)];
        now.shown = editor_.reading();
        now.seen = seenAfter(now.seen, before, now.shown);
        now.read_in_view = now.read_in_view || candidates_in_view_;
        const cv::Matx33d frame = now.photo_from_rectified.value_or(cv::Matx33d::eye());
        const auto put = [this, id = now.id, frame](const models::Reading& reading,
                                                    CellPlace place) {
            return [this, id, frame, reading, place] { putLetters(id, reading, place, frame); };
        };
        auto command = new ChangeCommand(tr("letters"), put(before, from),
                                         put(editor_.reading(), editor_.place()), gesture);
        if (outcome.as_before)
            command->setTakesBack();
        undo_.push(command);
        Q_EMIT lettersChanged();
        Q_EMIT workChanged();
    }
    // Where cells or lines came or went another cell may stand there now.
    const models::Reading& now = editor_.reading();
    const bool stands = before.lines.empty() ||
                        (before.lines.size() == now.lines.size() &&
                         before.lines[from.line].cells.size() <= now.lines[from.line].cells.size());
    stands ? leave(from, last_passed) : tellGoneThrough();
    Q_EMIT placeChanged();
}

void WorkSession::putLetters(const std::string& stamp_id, const models::Reading& reading,
                             CellPlace place, const cv::Matx33d& photo_from_rectified)
{
    StampWork* stamp = find(stamp_id);
    if (!stamp)
        return;
    stamp->seen = seenAfter(stamp->seen, stamp->shown, reading);
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
    const auto put = [this](const FilingFields& to) { return [this, to] { takeFields(to); }; };
    const int field = fieldChanged(fields_, fields);
    auto command = new ChangeCommand(tr("what is said of the piece"), put(fields_), put(fields),
                                     field < 0 ? field : fields_key + field);
    takeFields(fields);
    undo_.push(command);
}

void WorkSession::takeLent(const FilingFields& fields)
{
    lent_ = fields;
    takeFields(fields);
}

void WorkSession::takeFields(const FilingFields& fields)
{
    if (fields == fields_)
        return;
    fields_ = fields;
    Q_EMIT fieldsChanged();
    Q_EMIT workChanged();
}

}  // namespace gui
