#pragma once

#include <QObject>
#include <QTimer>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/gui/card_maker.h"
#include "app/gui/draft.h"
#include "app/gui/examine_worker.h"
#include "app/gui/photo_queue.h"
#include "app/gui/record_link.h"
#include "app/gui/table_state.h"
#include "app/gui/work_session.h"
#include "models/archive/archive.h"
#include "models/item_dating.h"
#include "models/roles.h"

namespace gui {

struct SittingOptions {
    MakeExaminer examiner;
    std::filesystem::path archive_folder;
    std::filesystem::path register_folder;  // only to tell which register was in use
    std::string author;
    bool read_ahead = true;
    models::Clock clock = models::utcNow;
    int draft_pause_ms = 800;    // drafts are kept after this pause in the work
    int rank_pause_ms = 15;      // candidates follow the letters after this pause
    int outline_pause_ms = 500;  // a moved outline is read again after this pause
};

// One person's sitting at the table: the photos laid out, the work on each, the worker that reads
// them, drafts and the archive. Knows no widget. Lives, and uses the archive, in one thread.
class Sitting : public QObject {
    Q_OBJECT

public:
    explicit Sitting(SittingOptions options, QObject* parent = nullptr);
    ~Sitting() override;

    PhotoQueue* queue() { return &queue_; }
    int place() const { return place_; }  // of the photo in hand; -1 when there is none
    WorkSession* session() const;         // nullptr while a photo is being read and without one
    std::shared_ptr<const models::MakerRegister> known() const { return known_; }
    // Of the readings as they stood when last ranked; nullptr until then.
    const models::CandidateList* candidates() const;
    const RecordLink* record() const;  // the filed record in hand; nullptr for new work
    bool isBusy() const { return photo_ticket_ != 0 || !stamp_tickets_.empty(); }

    // Files, and folders for the pictures in them; the first that is new is gone to.
    void openPhotos(const std::vector<std::filesystem::path>& files);
    void goTo(int place);
    void step(int by);  // next or last photo, stopping at the ends
    void goToNextUnfiled();
    // Passed over when the next unfiled one is gone to, until it is said again; undoable.
    void setAside(int place);
    // Takes a photo off the table. Nothing on the disk is touched, and its draft is kept; undoable.
    void takeOff(int place);
    // What was done last, in the photo in hand or on the table.
    void undo();
    void redo();
    bool stop();  // false when nothing was being read
    void followLetters(bool follow);

    // Photos that nobody has opened yet are read one after the other while nothing else is.
    bool readsAhead() const { return reads_ahead_; }
    void setReadsAhead(bool on);
    // Every cell's likeliest role in the stamp in hand, guessed as one reads.
    std::vector<std::vector<models::RoleSpan>> guessedRoles() const;

    // Says that a photo shows the same piece as another: they are filed as one record. Said again
    // it is taken back. Undoable; refused, with a sentence, for what is filed already.
    void joinPiece(int place, int with);
    // Names the stamp of which the one in hand is a view; empty where it is of its own.
    QString viewedInHand() const;
    // The stamp in hand is a view of the next of the piece's other stamps; after the last of none.
    void turnViewOf();
    // Says that a stamp on the table is another view of one in the same photo or in another, which
    // then shows the same piece. Said again it is taken back; undoable, and refused as joinPiece
    // is.
    void joinViews(const StampPlace& view, const StampPlace& of);

    // Where one was, as it was kept last; photos that are gone are left out.
    const WindowState& windowState() const { return window_; }
    void setWindowState(const WindowState& state);
    std::optional<WindowState> restoreTable();
    // Whether there are letters, and the person has confirmed none of any photo of the piece.
    bool isUnconfirmed();
    // The last thing that is kept.
    void leaveTable();

    // Files the work in hand (or what was changed in a filed record) in one go.
    //   layer  name of the layer in view
    // Throws models::ArchiveError or models::RegisterError; nothing is filed then.
    //   returns  false, and says why, when a photo of the piece was not opened yet
    bool fileRecord(const std::string& layer);
    // The record as it would be filed now, every outline in it; empty where no photo is in hand.
    models::ItemRecord itemInHand() const;
    // What stands in the record in hand beside what is said now: conclusions, the latest last.
    std::vector<models::AttributionRecord> conclusions() const;
    // The stamps of the record in hand, by their keys among what is said of them.
    std::vector<std::string> stampKeys() const;
    // While followed, the record in hand is dated anew after every change; `dated` tells.
    void followDating(bool follow);
    const std::vector<models::PartDating>* dating() const { return dating_.get(); }
    // Has a filed record dated; `recordDated` tells.
    void dateRecord(const models::ItemRecord& item);

    std::vector<models::FoundItem> find(const models::FindQuery& query);
    std::optional<models::ItemRecord> look(const std::string& id);
    // With a draft: as it was left when the record was last being corrected. One without a photo is
    // opened too: its letters stand without a picture.
    void openRecord(const models::ItemRecord& item, std::optional<Draft> draft = std::nullopt);

    // What an earlier sitting left unfiled; troubles are said. A draft that was filed, where the
    // program ended before it was put away, is put away, which is said.
    std::vector<Draft> earlierDrafts();
    void takeUp(const std::vector<Draft>& drafts);
    // Keeps drafts of all unfiled work now. Throws DraftError.
    void keepDrafts();
    // Names of what is not filed as it is now, but for what was laid by: set aside, off the table
    // or without a stamp.
    QStringList unfiled(bool laid_by_too = false) const;

Q_SIGNALS:
    void knownChanged();
    void sessionChanged();
    void candidatesChanged();
    void dated();  // see dating()
    void recordDated(const QString& item_id,
                     std::shared_ptr<const std::vector<models::PartDating>> parts);
    void progressed(const QString& stage, double done);
    void aheadChanged(int read, int all);  // photos read so far, of those on the table
    void idle();
    void noted(const QString& sentence);         // of what was done
    void notedOfPhoto(const QString& sentence);  // of the photo in hand, while it is in hand
    void troubled(const QString& sentence);

private:
    struct Place {  // the work on one photo
        std::unique_ptr<WorkSession> session;
        std::shared_ptr<const ReadAhead> ahead;  // read before it is opened, kept small
        std::string filed_as;                    // id of its record
        // Its stamps as they were read ahead or left, while it has no session: where, with which
        // ids, of which they are views.
        std::vector<StampWork> waiting;
        cv::Size photo_size;
        bool put_aside = false;  // unfiled work that left memory as a draft
        bool set_aside = false;  // by the person, for later
        std::optional<RecordLink> record;
        FilingFields filed_fields;
        std::optional<Draft> draft;  // to be laid over the examination to come
        bool from_draft = false;     // holds what an earlier sitting left unfiled
    };
    Place* current();
    const Place* current() const;
    bool isUnfiled(const Place& place) const;
    bool isWorthKeeping(const Place& place) const;
    models::Archive& archive();
    void listen(int place, WorkSession* session);
    PhotoState stateOf(int place) const;
    void putSetAside(int place, bool aside);
    using Pieces = std::vector<std::pair<int, int>>;  // place, and that with which it is one piece
    void putOnTable(int place, bool on, const Pieces& pieces);
    void clearHands();
    QUndoStack* stackInTurn(bool again);
    void startReading(int place);
    int requestPhoto(int place);
    void takePhoto(int ticket, const OpenedPhoto& photo);
    void lay(int place, const flow::Examination& examination);
    void readAhead();
    void takeAhead(const OpenedPhoto& photo);
    void stopAhead();
    void tellAhead();
    std::vector<int> piecePlaces(int place) const;
    void putPiece(int place, int with);
    void noteOnTable(const QString& what, int place, const std::function<void()>& undo,
                     const std::function<void()>& redo);
    bool mayJoin(int place, int with);
    const std::vector<StampWork>& stampsAt(int place) const;
    void keepWaiting(int place, std::vector<StampWork> stamps, cv::Size photo_size);
    void layWaiting(Place& here, std::vector<StampWork>& stamps) const;
    const StampWork* stampOnTable(const StampPlace& at) const;
    QString wordsFor(const StampPlace& at) const;
    struct ViewChange {
        StampPlace at;
        std::string before, after;
    };
    std::vector<ViewChange> viewChanges(const StampPlace& view, const std::string& of) const;
    void putViews(const std::vector<ViewChange>& changes, bool after);
    void tellStamps(int place);
    void shareFields(int place);
    bool isReadyToFile(const std::vector<int>& places);
    void fileNew(const std::vector<int>& places, const FilingFacts& facts);
    std::vector<models::Reading> evidence() const;
    Draft draftOf(int place, const Place& work) const;
    void keepSoon();
    void keepNow();
    void takeStamp(int ticket, std::shared_ptr<const flow::StampExamination> examination);
    void takeCandidates(int ticket, std::shared_ptr<const models::CandidateList> candidates);
    void takeTrouble(int ticket, const QString& sentence);
    void takeStop(int ticket);
    void rest();
    void takeRecord(Place& here, const models::ItemRecord& item, const std::filesystem::path& file);
    void tieToRecord(Place& here, const models::ItemRecord& item, Draft as_filed);
    void openWithoutPhoto(const models::ItemRecord& item);
    void layWithoutPhoto(int place);
    int layOutAgain(const TableState::Laid& laid);
    std::map<std::filesystem::path, std::string> putAwayFiledDrafts();
    std::optional<models::ItemRecord> filedFrom(const Draft& draft);
    void layDraft(Place& place, const vision::Photo& photo, std::vector<StampWork>& stamps);
    void sayWhatWasFound(const vision::Photo& photo, std::size_t stamps);
    void fileChanges(const std::vector<int>& places, const FilingFacts& facts);
    void takeFiledFields(Place& work);
    FilingFields asBefore();
    void lendFrom(const models::ItemRecord& item);
    void date();
    void takeDating(int ticket, std::shared_ptr<const std::vector<models::PartDating>> parts);
    std::vector<PhotoWork> pieceWork() const;
    void sayFiled(const models::ItemRecord& item, std::size_t left_out, bool unconfirmed);
    void readStaleStamps();
    void rank();
    void makeRoom();
    bool mayLeave(int place) const;
    void keepDraftsQuietly();

    SittingOptions options_;
    DraftFolder drafts_;
    PhotoQueue queue_;
    int place_ = -1;
    std::map<int, Place> places_;
    QUndoStack table_undo_;   // what concerns more than the work on one photo
    std::deque<int> recent_;  // places with a session, the latest last
    std::optional<models::Archive> archive_;
    std::shared_ptr<const models::MakerRegister> known_;
    std::shared_ptr<const models::CandidateList> candidates_;
    std::shared_ptr<const std::vector<models::PartDating>> dating_;
    std::optional<FilingFields> before_;  // said of the item filed last that others may share
    std::string record_dated_;            // id of the filed record that is being dated
    bool follow_ = false, follow_dating_ = false;
    bool reads_ahead_;
    bool left_ = false;
    int photo_ticket_ = 0, rank_ticket_ = 0, ahead_ticket_ = 0, date_ticket_ = 0;
    int record_date_ticket_ = 0;
    int ahead_place_ = -1;
    int opened_place_ = -1;  // whose photo is held ready, the next to be gone to
    OpenedPhoto opened_;
    mutable std::pair<std::string, models::RoleContext> role_context_;  // of an item type
    mutable bool has_role_context_ = false;
    WindowState window_;
    std::optional<TableState> returning_;  // until the photo that was in hand is read
    std::map<int, std::pair<int, std::string>> stamp_tickets_;  // ticket -> place and stamp
    QTimer draft_pause_, rank_pause_, outline_pause_, keep_pause_;
    CardMaker cards_;
    ExamineWorker worker_;  // last: it ends before what it reports to
};

}  // namespace gui
