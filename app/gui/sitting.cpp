#include "app/gui/sitting.h"

#include <algorithm>
#include <cctype>
#include <utility>

#include "app/gui/cautions.h"

namespace gui {

namespace {

struct FolderLook {
    std::vector<std::filesystem::path> pictures;  // in the folder itself, by name
    QStringList folders;                          // in it, each a lot of its own
    int others = 0;                               // files that are no pictures
};

FolderLook lookInto(const std::filesystem::path& folder)
{
    FolderLook look;
    std::error_code failed;
    for (const auto& entry : std::filesystem::directory_iterator(folder, failed)) {
        const QString name = nameOf(entry.path());
        std::string kind = entry.path().extension().string();
        std::transform(kind.begin(), kind.end(), kind.begin(), [](unsigned char letter) {
            return static_cast<char>(std::tolower(letter));
        });
        const auto known = {".jpg",  ".jpeg", ".png",  ".tif", ".tiff",
                            ".webp", ".bmp",  ".heic", ".heif"};
        std::error_code unknown;
        if (name.startsWith('.'))  // hidden: of the system
            continue;
        if (entry.is_directory(unknown))
            look.folders << name;
        else if (entry.is_regular_file(unknown) &&
                 std::find(known.begin(), known.end(), kind) != known.end())
            look.pictures.push_back(entry.path());
        else
            ++look.others;
    }
    std::sort(look.pictures.begin(), look.pictures.end());
    look.folders.sort();
    return look;
}

// What of a folder was not laid out, in a sentence; empty where nothing was left out.
QString leftOut(const std::filesystem::path& folder, const FolderLook& look)
{
    QStringList parts;
    if (look.pictures.empty())
        parts << Sitting::tr(
                     "There are no pictures in the folder %1; photos are JPEG, PNG, TIFF, "
                     "WebP, BMP or HEIC files.")
                     .arg(QString::fromStdString(folder.string()));
    if (!look.folders.isEmpty())
        parts << Sitting::tr("Folders in %1 were left out; drop them too if they hold photos: %2.")
                     .arg(nameOf(folder), look.folders.join(", "));
    if (!look.pictures.empty() && look.others > 0)
        parts << Sitting::tr("Files in %1 that are no photos were left out: %2.")
                     .arg(nameOf(folder))
                     .arg(look.others);
    return parts.join(" ");
}

}  // namespace

Sitting::Sitting(SittingOptions options, QObject* parent)
    : QObject(parent),
      options_(std::move(options)),
      drafts_(options_.archive_folder / "drafts"),
      reads_ahead_(options_.read_ahead),
      worker_(options_.examiner)
{
    const std::pair<QTimer*, int> pauses[] = {{&draft_pause_, options_.draft_pause_ms},
                                              {&rank_pause_, options_.rank_pause_ms},
                                              {&outline_pause_, options_.outline_pause_ms},
                                              {&keep_pause_, 0}};
    for (const auto& [timer, pause] : pauses) {
        timer->setSingleShot(true);
        timer->setInterval(pause);
    }
    connect(&keep_pause_, &QTimer::timeout, this, &Sitting::keepNow);
    connect(&queue_, &PhotoQueue::rowsInserted, this, [this](const QModelIndex&, int place) {
        if (!queue_.recordAt(place).empty())
            return;
        cards_.want(queue_.file(place));
        queue_.setState(place, stateOf(place));
    });
    connect(&cards_, &CardMaker::made, this, [this](const QString& file, const QImage& picture) {
        const int place = queue_.find(file.toStdString());
        if (place >= 0 && !queue_.hasPicture(place))
            queue_.setPicture(place, picture);
    });
    connect(&queue_, &PhotoQueue::laidOnto, this, &Sitting::joinPiece);
    connect(&draft_pause_, &QTimer::timeout, this, &Sitting::keepDraftsQuietly);
    connect(&rank_pause_, &QTimer::timeout, this, &Sitting::rank);
    connect(&rank_pause_, &QTimer::timeout, this, &Sitting::date);
    connect(&outline_pause_, &QTimer::timeout, this, &Sitting::readStaleStamps);
    connect(&worker_, &ExamineWorker::ready, this, [this](auto known) {
        known_ = known;
        Q_EMIT knownChanged();
    });
    connect(&worker_, &ExamineWorker::photoExamined, this, &Sitting::takePhoto);
    connect(&worker_, &ExamineWorker::stampExamined, this, &Sitting::takeStamp);
    connect(&worker_, &ExamineWorker::ranked, this, &Sitting::takeCandidates);
    connect(&worker_, &ExamineWorker::dated, this, &Sitting::takeDating);
    connect(&worker_, &ExamineWorker::failed, this, &Sitting::takeTrouble);
    connect(&worker_, &ExamineWorker::gaveUp, this, &Sitting::takeStop);
    connect(&worker_, &ExamineWorker::progressed, this,
            [this](int ticket, const QString& stage, double done) {
                if (ticket == photo_ticket_ || stamp_tickets_.count(ticket))
                    Q_EMIT progressed(stage, done);
            });
    connect(this, &Sitting::sessionChanged, this, &Sitting::keepSoon);
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
    QStringList left_out;
    const auto lay_out = [&](const std::filesystem::path& file) {
        const int found = queue_.find(file);
        const bool is_new = found < 0 || !queue_.isOnTable(found);
        const int place = queue_.add(file);
        if (first < 0 && (is_new || place_ < 0 || files.size() == 1))
            first = place;
    };
    for (const std::filesystem::path& file : files) {
        std::error_code unknown;
        if (!std::filesystem::is_directory(file, unknown)) {
            lay_out(file);
            continue;
        }
        const FolderLook look = lookInto(file);
        std::for_each(look.pictures.begin(), look.pictures.end(), lay_out);
        if (const QString sentence = leftOut(file, look); !sentence.isEmpty())
            left_out << sentence;
    }
    if (first >= 0)
        goTo(first);
    if (!left_out.isEmpty())
        Q_EMIT noted(left_out.join(" "));
    tellAhead();
}

void Sitting::step(int by)
{
    if (const int to = queue_.beside(place_, by); to >= 0)
        goTo(to);
}

void Sitting::goToNextUnfiled()
{
    const int next = queue_.nextUnfiled(place_);
    if (next >= 0)
        return goTo(next);
    Q_EMIT noted(queue_.onTable() == 0
                     ? tr("No photos are on the table yet; Ctrl+O opens some.")
                     : tr("Every other photo on the table is filed, set aside, without a stamp or "
                          "cannot be read; F10 shows which."));
}

bool Sitting::stop()
{
    const bool busy = isBusy();
    worker_.cancel(photo_ticket_);
    for (const auto& [ticket, stamp] : stamp_tickets_)
        worker_.cancel(ticket);
    return busy;
}

void Sitting::sayWhatWasFound(const vision::Photo& photo, std::size_t stamps)
{
    for (const std::string& warning : photo.warnings) {
        const QString sentence = QString::fromStdString(warning);
        const bool light = sentence.contains("lamp") || sentence.contains("light");
        Q_EMIT notedOfPhoto(light ? sentence + " " + lampCaution() : sentence);
    }
    if (stamps == 0 && !photo.pixels.empty())
        Q_EMIT noted(tr("No stamp was found in %1. F9 opens the photo; there Ins puts an outline "
                        "where you see one.")
                         .arg(nameOf(photo.file)));
}

void Sitting::listen(int place, WorkSession* session)
{
    connect(session, &WorkSession::placeChanged, this, &Sitting::keepSoon);
    connect(session, &WorkSession::fieldsChanged, this, [this, place] { shareFields(place); });
    connect(session, &WorkSession::workChanged, this, [this, place] {
        draft_pause_.start();
        keepSoon();
        if (place != place_)
            return;
        queue_.setState(place, stateOf(place));
        rank_pause_.start();
    });
    connect(session->undoStack(), &QUndoStack::indexChanged, this, [this, place] {
        if (place == place_)
            queue_.setState(place, stateOf(place));
    });
    connect(session, &WorkSession::examinationWanted, this, [this] { outline_pause_.start(); });
    connect(session, &WorkSession::outlinesChanged, this, [this, place] { tellStamps(place); });
    tellStamps(place);
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
    rank_ticket_ = worker_.rankReadings(evidence(), here->fields().type_id);
}

void Sitting::takeCandidates(int ticket, std::shared_ptr<const models::CandidateList> candidates)
{
    if (ticket != rank_ticket_ || !session())
        return;
    candidates_ = std::move(candidates);
    Q_EMIT candidatesChanged();
}

std::vector<std::vector<models::RoleSpan>> Sitting::guessedRoles() const
{
    const WorkSession* here = session();
    if (!here || !here->stamp())
        return {};
    const std::string& type_id = here->fields().type_id;
    if (known_ && (!has_role_context_ || role_context_.first != type_id)) {
        role_context_ = {type_id, models::roleContextOf(*known_, type_id)};
        has_role_context_ = true;
    }
    return models::guessRoles(here->stamp()->shown.lines, role_context_.second);
}

}  // namespace gui
