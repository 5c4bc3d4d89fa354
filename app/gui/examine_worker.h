#pragma once

#include <QObject>
#include <QString>
#include <QThread>
#include <future>
#include <map>
#include <memory>
#include <stop_token>
#include <vector>

#include "app/gui/read_ahead.h"

namespace gui {

// A stamp to be looked at, and how.
struct StampRequest {
    vision::StampOutline outline;
    bool mirrored = false;  // it is a mirror image
    bool keep_up = false;   // the outline's own up is right
};

// Looks at pictures in a thread of its own, one request after another, so that the window never
// waits; readings are ranked in a second one, so that candidates do not wait for pictures. Every
// request has a ticket, and is answered by exactly one signal that carries it, or by `gaveUp` once
// it was cancelled. Whatever a stage throws arrives as a sentence in `failed`.
class ExamineWorker : public QObject {
    Q_OBJECT

public:
    explicit ExamineWorker(MakeExaminer make, QObject* parent = nullptr);
    // Cancels what runs and waits for the stage at hand to end.
    ~ExamineWorker() override;

    // Starts the thread and loads the engines; connect to the signals before. Requests made
    // earlier wait for it.
    void begin();

    int examinePhoto(const std::filesystem::path& file, const std::string& type_id);
    // The photo with these stamps instead of located ones.
    int examineOutlines(const std::filesystem::path& file, const std::vector<StampRequest>& stamps,
                        const std::string& type_id);
    // A photo that was read ahead; read anew if its file has changed.
    int openAgain(const std::filesystem::path& file, std::shared_ptr<const ReadAhead> ahead,
                  const std::string& type_id);
    int examineStamp(const vision::Photo& photo, const StampRequest& stamp,
                     const std::string& type_id);
    int rankReadings(const std::vector<models::Reading>& readings, const std::string& type_id);
    int dateRecord(const models::ItemRecord& record);

    void cancel(int ticket);
    void cancelAll();
    bool isBusy() const { return !running_.empty(); }

Q_SIGNALS:
    void ready(std::shared_ptr<const models::MakerRegister> known);
    void progressed(int ticket, const QString& stage, double done);
    void photoExamined(int ticket, const OpenedPhoto& photo);
    void stampExamined(int ticket, std::shared_ptr<const flow::StampExamination> examination);
    void ranked(int ticket, std::shared_ptr<const models::CandidateList> candidates);
    void dated(int ticket, std::shared_ptr<const std::vector<models::PartDating>> parts);
    void gaveUp(int ticket);
    void failed(int ticket, const QString& sentence);
    void idle();

private:
    using Task = std::function<void(int ticket, std::stop_token stop)>;
    int start(QObject* inside, Task task);
    flow::Examination readPhoto(int ticket, const std::filesystem::path& file,
                                const std::string& type_id, std::stop_token stop);
    void perform(int ticket, const Task& task, std::stop_token stop);
    void prepare();
    void finish(int ticket);

    QThread thread_;
    QObject inside_;  // lives in thread_; requests are queued to it
    QThread rank_thread_;
    QObject inside_ranking_;  // lives in rank_thread_
    MakeExaminer make_;
    std::shared_ptr<Examiner> examiner_;  // touched in thread_ alone
    struct Meaning {
        decltype(Examiner::rankReadings) rank;
        decltype(Examiner::dateRecord) date;
    };
    std::promise<Meaning> meaning_made_;
    std::shared_future<Meaning> meaning_;  // waited for in rank_thread_
    bool meaning_told_ = false;            // touched in thread_ alone
    std::map<int, std::stop_source> running_;
    int last_ticket_ = 0;
};

}  // namespace gui
