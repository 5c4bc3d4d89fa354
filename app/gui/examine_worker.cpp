#include "app/gui/examine_worker.h"

#include <exception>
#include <utility>

namespace gui {

namespace {

// Stages are told by the flow in plain words; those with a number keep it.
QString stageWord(const std::string& stage)
{
    if (stage == "loading")
        return QObject::tr("loading the photo");
    if (stage == "looking for stamps")
        return QObject::tr("looking for stamps");
    if (stage == "weighing what it can mean")
        return QObject::tr("weighing what it can mean");
    const QStringList words = QString::fromStdString(stage).split(' ');
    if (words.size() == 5 && stage.starts_with("reading stamp "))
        return QObject::tr("reading stamp %1 of %2").arg(words[2], words[4]);
    return QObject::tr("reading");
}

// The sentence for whatever was thrown out of a stage.
QString sentenceOf(const std::exception_ptr& thrown)
{
    try {
        std::rethrow_exception(thrown);
    } catch (const std::bad_alloc&) {
        return QObject::tr(
            "There is not enough memory for this picture; close other programs or "
            "make the picture smaller.");
    } catch (const std::exception& error) {
        return QString::fromUtf8(error.what());
    } catch (...) {
        return QObject::tr("The picture could not be examined, for a reason nobody foresaw.");
    }
}

}  // namespace

ExamineWorker::ExamineWorker(MakeExaminer make, QObject* parent)
    : QObject(parent), make_(std::move(make)), meaning_(meaning_made_.get_future().share())
{
    inside_.moveToThread(&thread_);
    inside_ranking_.moveToThread(&rank_thread_);
    rank_thread_.setObjectName("ranking");
    thread_.setObjectName("examining");
    QMetaObject::invokeMethod(&inside_, [this] {
        try {
            prepare();
        } catch (...) {
            Q_EMIT failed(0, sentenceOf(std::current_exception()));
        }
    });
}

void ExamineWorker::begin()
{
    thread_.start();
    rank_thread_.start();
}

ExamineWorker::~ExamineWorker()
{
    cancelAll();
    thread_.quit();
    thread_.wait();
    if (!meaning_told_)
        meaning_made_.set_value({});  // whoever waits for it
    rank_thread_.quit();
    rank_thread_.wait();
}

void ExamineWorker::prepare()
{
    if (examiner_)
        return;
    examiner_ = std::make_shared<Examiner>(make_());
    meaning_made_.set_value({examiner_->rankReadings, examiner_->dateRecord});
    meaning_told_ = true;
    Q_EMIT ready(examiner_->known);
    for (const std::string& trouble : examiner_->troubles)
        Q_EMIT failed(0, QString::fromStdString(trouble));
}

int ExamineWorker::start(QObject* inside, Task task)
{
    const int ticket = ++last_ticket_;
    std::stop_source source;
    running_.emplace(ticket, source);
    QMetaObject::invokeMethod(
        inside, [this, ticket, task = std::move(task), stop = source.get_token()] {
            perform(ticket, task, stop);
            QMetaObject::invokeMethod(this, [this, ticket] { finish(ticket); });
        });
    return ticket;
}

void ExamineWorker::perform(int ticket, const Task& task, std::stop_token stop)
{
    if (stop.stop_requested()) {
        Q_EMIT gaveUp(ticket);
        return;
    }
    try {
        task(ticket, stop);
    } catch (const flow::Cancelled&) {
        Q_EMIT gaveUp(ticket);
    } catch (...) {
        Q_EMIT failed(ticket, sentenceOf(std::current_exception()));
    }
}

void ExamineWorker::finish(int ticket)
{
    running_.erase(ticket);
    if (running_.empty())
        Q_EMIT idle();
}

flow::Examination ExamineWorker::readPhoto(int ticket, const std::filesystem::path& file,
                                           const std::string& type_id, std::stop_token stop)
{
    prepare();
    flow::ExamineOptions options;
    options.type_id = type_id;
    const auto tell = [&](const std::string& stage, double done) {
        Q_EMIT progressed(ticket, stageWord(stage), done);
    };
    flow::Examination examination = examiner_->examinePhoto(file, options, stop, tell);
    if (stop.stop_requested())
        throw flow::Cancelled{};
    return examination;
}

int ExamineWorker::examinePhoto(const std::filesystem::path& file, const std::string& type_id)
{
    return start(&inside_, [this, file, type_id](int ticket, std::stop_token stop) {
        Q_EMIT photoExamined(ticket, opened(std::make_shared<const flow::Examination>(
                                         readPhoto(ticket, file, type_id, stop))));
    });
}

int ExamineWorker::openAgain(const std::filesystem::path& file,
                             std::shared_ptr<const ReadAhead> ahead, const std::string& type_id)
{
    return start(&inside_, [this, file, ahead, type_id](int ticket, std::stop_token stop) {
        prepare();
        auto examination = withPixels(*ahead, file, *examiner_);
        if (stop.stop_requested())
            throw flow::Cancelled{};
        if (!examination)
            examination =
                std::make_shared<const flow::Examination>(readPhoto(ticket, file, type_id, stop));
        Q_EMIT photoExamined(ticket, opened(examination));
    });
}

int ExamineWorker::examineOutlines(const std::filesystem::path& file,
                                   const std::vector<StampRequest>& stamps,
                                   const std::string& type_id)
{
    return start(&inside_, [this, file, stamps, type_id](int ticket, std::stop_token stop) {
        prepare();
        flow::ExamineOptions options;
        options.type_id = type_id;
        flow::Examination examination;
        Q_EMIT progressed(ticket, tr("loading the photo"), 0);
        examination.photo = examiner_->loadPhoto(file);
        for (const StampRequest& stamp : stamps) {
            if (stop.stop_requested())
                throw flow::Cancelled{};
            const double done = static_cast<double>(examination.stamps.size() + 1) /
                                static_cast<double>(stamps.size() + 1);
            Q_EMIT progressed(ticket, tr("reading the stamps"), done);
            options.mirrored = stamp.mirrored;
            options.keep_up = stamp.keep_up;
            examination.stamps.push_back(
                examiner_->examineStamp(examination.photo, stamp.outline, options, stop));
        }
        if (stop.stop_requested())
            throw flow::Cancelled{};
        Q_EMIT photoExamined(
            ticket, opened(std::make_shared<const flow::Examination>(std::move(examination))));
    });
}

int ExamineWorker::examineStamp(const vision::Photo& photo, const StampRequest& stamp,
                                const std::string& type_id)
{
    return start(&inside_, [this, photo, stamp, type_id](int ticket, std::stop_token stop_asked) {
        prepare();
        flow::ExamineOptions options;
        options.type_id = type_id;
        options.mirrored = stamp.mirrored;
        options.keep_up = stamp.keep_up;
        Q_EMIT progressed(ticket, tr("reading the stamp again"), 0);
        auto examination = examiner_->examineStamp(photo, stamp.outline, options, stop_asked);
        if (stop_asked.stop_requested())
            throw flow::Cancelled{};
        Q_EMIT stampExamined(
            ticket, std::make_shared<const flow::StampExamination>(std::move(examination)));
    });
}

int ExamineWorker::rankReadings(const std::vector<models::Reading>& readings,
                                const std::string& type_id)
{
    return start(&inside_ranking_, [this, readings, type_id](int ticket, std::stop_token stop) {
        const auto& rank = meaning_.get().rank;
        if (!rank)
            throw flow::Cancelled{};
        auto list = rank(readings, type_id);
        if (stop.stop_requested())
            throw flow::Cancelled{};
        Q_EMIT ranked(ticket, std::make_shared<const models::CandidateList>(std::move(list)));
    });
}

int ExamineWorker::dateRecord(const models::ItemRecord& record)
{
    return start(&inside_ranking_, [this, record](int ticket, std::stop_token) {
        const auto& date = meaning_.get().date;
        if (!date)
            throw flow::Cancelled{};
        Q_EMIT dated(ticket, std::make_shared<const std::vector<models::PartDating>>(date(record)));
    });
}

void ExamineWorker::cancel(int ticket)
{
    const auto found = running_.find(ticket);
    if (found != running_.end())
        found->second.request_stop();
}

void ExamineWorker::cancelAll()
{
    for (auto& [ticket, source] : running_)
        source.request_stop();
}

}  // namespace gui
