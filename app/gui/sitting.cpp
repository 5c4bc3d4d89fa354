#include "app/gui/sitting.h"

#include <algorithm>
#include <utility>

#include "app/gui/picture.h"

namespace gui {

namespace {

constexpr std::size_t most_photos_in_memory = 3;  // a large one takes 150 MB
constexpr int card_width_px = 320;

std::vector<StampWork> workFromExamination(const flow::Examination& examination)
{
    std::vector<StampWork> stamps;
    for (const flow::StampExamination& examined : examination.stamps) {
        StampWork stamp;
        takeExamination(stamp, std::make_shared<const flow::StampExamination>(examined), {});
        stamps.push_back(std::move(stamp));
    }
    return stamps;
}

QImage cardOf(const cv::Mat& pixels)
{
    const double scale = 1.0 * card_width_px / std::max(1, std::max(pixels.cols, pixels.rows));
    return pictureOf(pixels, {std::max(1, static_cast<int>(pixels.cols * scale)),
                              std::max(1, static_cast<int>(pixels.rows * scale))});
}

}  // namespace

Sitting::Sitting(SittingOptions options, QObject* parent)
    : QObject(parent),
      options_(std::move(options)),
      drafts_(options_.archive_folder / "drafts"),
      worker_(options_.examiner)
{
    const std::pair<QTimer*, int> pauses[] = {{&draft_pause_, options_.draft_pause_ms},
                                              {&rank_pause_, options_.rank_pause_ms},
                                              {&outline_pause_, options_.outline_pause_ms}};
    for (const auto& [timer, pause] : pauses) {
        timer->setSingleShot(true);
        timer->setInterval(pause);
    }
    connect(&draft_pause_, &QTimer::timeout, this, &Sitting::keepDraftsQuietly);
    connect(&rank_pause_, &QTimer::timeout, this, &Sitting::rank);
    connect(&outline_pause_, &QTimer::timeout, this, &Sitting::readStaleStamps);
    connect(&worker_, &ExamineWorker::ready, this, [this](auto known) {
        known_ = known;
        Q_EMIT knownChanged();
    });
    connect(&worker_, &ExamineWorker::photoExamined, this, &Sitting::takePhoto);
    connect(&worker_, &ExamineWorker::stampExamined, this, &Sitting::takeStamp);
    connect(&worker_, &ExamineWorker::ranked, this, &Sitting::takeCandidates);
    connect(&worker_, &ExamineWorker::failed, this, &Sitting::takeTrouble);
    connect(&worker_, &ExamineWorker::gaveUp, this, &Sitting::takeStop);
    connect(&worker_, &ExamineWorker::progressed, this,
            [this](int ticket, const QString& stage, double done) {
                if (ticket == photo_ticket_ || stamp_tickets_.count(ticket))
                    Q_EMIT progressed(stage, done);
            });
    worker_.begin();
}

Sitting::~Sitting() = default;

Sitting::Place* Sitting::current()
{
    const auto found = places_.find(place_);
    return found == places_.end() ? nullptr : &found->second;
}

const Sitting::Place* Sitting::current() const
{
    const auto found = places_.find(place_);
    return found == places_.end() ? nullptr : &found->second;
}

WorkSession* Sitting::session() const
{
    return current() ? current()->session.get() : nullptr;
}

const models::CandidateList* Sitting::candidates() const
{
    return candidates_.get();
}

const RecordLink* Sitting::record() const
{
    return current() && current()->record ? &*current()->record : nullptr;
}

void Sitting::openPhotos(const std::vector<std::filesystem::path>& files)
{
    int first = -1;
    for (const std::filesystem::path& file : files) {
        const int place = queue_.add(file);
        first = first < 0 ? place : first;
    }
    if (first >= 0)
        goTo(first);
}

void Sitting::step(int by)
{
    const int last = queue_.rowCount() - 1;
    const int to = std::clamp(place_ + by, 0, std::max(0, last));
    if (last >= 0 && to != place_)
        goTo(to);
}

void Sitting::goTo(int place)
{
    if (place < 0 || place >= queue_.rowCount())
        return;
    stop();
    if (photo_ticket_ != 0)
        queue_.setState(place_, PhotoState::ToRead);
    photo_ticket_ = 0;  // what is still on its way belongs to a photo put aside
    stamp_tickets_.clear();
    keepDraftsQuietly();
    place_ = place;
    candidates_.reset();
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
}

void Sitting::startReading(int place)
{
    Place& here = places_[place];
    const std::filesystem::path file = queue_.file(place);
    if (!here.draft)
        for (Draft& draft : drafts_.readAll().drafts)
            if (draft.photo == file && draft.record_id.empty())
                here.draft = std::move(draft);
    std::vector<StampRequest> stamps;
    std::string type_id;
    if (here.draft) {
        for (const StampWork& stamp : here.draft->stamps)
            stamps.push_back({stamp.outline, stamp.mirrored});
        type_id = here.draft->fields.type_id;
    }
    photo_ticket_ = here.draft ? worker_.examineOutlines(file, stamps, type_id)
                               : worker_.examinePhoto(file, type_id);
    queue_.setState(place, PhotoState::Reading);
    Q_EMIT progressed(tr("opening the photo"), 0);
}

bool Sitting::stop()
{
    const bool busy = isBusy();
    worker_.cancel(photo_ticket_);
    for (const auto& [ticket, stamp] : stamp_tickets_)
        worker_.cancel(ticket);
    return busy;
}

void Sitting::takePhoto(int ticket, std::shared_ptr<const flow::Examination> examination)
{
    if (ticket != photo_ticket_)
        return;
    photo_ticket_ = 0;
    Place& here = places_[place_];
    std::vector<StampWork> stamps = workFromExamination(*examination);
    here.session = std::make_unique<WorkSession>(examination->photo, options_.author);
    queue_.setPicture(place_, cardOf(examination->photo.pixels));
    layDraft(here, examination->photo, stamps);
    listen(place_, here.session.get());
    here.session->setStamps(std::move(stamps));
    queue_.setState(place_, here.record       ? PhotoState::Filed
                            : isUnfiled(here) ? PhotoState::Begun
                                              : PhotoState::Read);
    makeRoom();
    Q_EMIT idle();
    Q_EMIT sessionChanged();
    sayWhatWasFound(examination->photo, here.session->stamps().size());
    rank_pause_.start();
}

void Sitting::sayWhatWasFound(const vision::Photo& photo, std::size_t stamps)
{
    for (const std::string& warning : photo.warnings)
        Q_EMIT noted(QString::fromStdString(warning));
    if (stamps == 0)
        Q_EMIT noted(tr("No stamp was found in %1. F9 opens the photo; there Ins puts an outline "
                        "where you see one.")
                         .arg(nameOf(photo.file)));
}

void Sitting::listen(int place, WorkSession* session)
{
    connect(session, &WorkSession::workChanged, this, [this, place] {
        draft_pause_.start();
        if (place != place_)
            return;
        if (!places_[place].record)
            queue_.setState(place,
                            isUnfiled(places_[place]) ? PhotoState::Begun : PhotoState::Read);
        rank_pause_.start();
    });
    connect(session, &WorkSession::examinationWanted, this, [this] { outline_pause_.start(); });
}

void Sitting::followLetters(bool follow)
{
    follow_ = follow;
    if (follow && session())
        rank();
}

void Sitting::rank()
{
    WorkSession* here = session();
    if (!here || !follow_)
        return;
    worker_.cancel(rank_ticket_);
    rank_ticket_ = worker_.rankReadings(here->readings(), here->fields().type_id);
}

void Sitting::takeCandidates(int ticket, std::shared_ptr<const models::CandidateList> candidates)
{
    if (ticket != rank_ticket_ || !session())
        return;
    candidates_ = std::move(candidates);
    Q_EMIT candidatesChanged();
}

// Photos that have waited longest leave memory, unless undo or a tie to a record would go too.
void Sitting::makeRoom()
{
    recent_.erase(std::remove(recent_.begin(), recent_.end(), place_), recent_.end());
    recent_.push_back(place_);
    const auto leaves = [this](int place) {
        const Place& here = places_[place];
        return place != place_ && !here.record && !isUnfiled(here);
    };
    while (recent_.size() > most_photos_in_memory) {
        const auto oldest = std::find_if(recent_.begin(), recent_.end(), leaves);
        if (oldest == recent_.end())
            return;
        places_[*oldest].session.reset();
        recent_.erase(oldest);
    }
}

}  // namespace gui
